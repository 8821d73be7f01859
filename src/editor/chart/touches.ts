/** What the pages are told about a pointer on the chart. */
export interface ChartPointer {
  readonly clientX: number;
  readonly clientY: number;
  readonly shift: boolean;
  readonly alt: boolean;
  /** Control, or command on a Mac. */
  readonly control: boolean;
  readonly pointer: 'mouse' | 'pen' | 'touch' | 'keyboard';
  /** 1 for a single press, 2 for the second press of a double one. */
  readonly presses: number;
}

export type StrokePhase = 'start' | 'move' | 'end' | 'cancel';

/** What `touches` asks for and tells. Points are px from the frame's corner. */
export interface TouchPort {
  /** The stitches on the way between two points, or at one point. */
  stitches(from: readonly [number, number], to: readonly [number, number]): number[];
  /** Whether a press moves the chart instead. */
  grabbing(): boolean;
  point(stitch: number | null, info: ChartPointer): void;
  stroke(phase: StrokePhase, stitches: readonly number[], info: ChartPointer): void;
  tap(stitch: number, info: ChartPointer): void;
  menu(at: readonly [number, number], info: ChartPointer): void;
}

const LONG_PRESS_MS = 500;
/** A finger that moves less is still tapping. */
const FINGER_SLACK_PX = 8;
const DOUBLE_PRESS_MS = 400;

interface Press {
  readonly id: number;
  readonly from: readonly [number, number];
  readonly presses: number;
  last: readonly [number, number];
  started: boolean;
  left: boolean;
  first: number | null;
  info: ChartPointer;
}

/**
 * Turns the pointers on a frame into strokes, taps, pointing and row menus. One press is one stroke: start, moves, then
 * end or cancel; a press that never left its first stitch is also a tap. Moves are gathered and told once a frame. A
 * finger's stroke starts when it moves or lifts, so that the first finger of a pinch lays nothing.
 */
export function touches(frame: HTMLElement, port: TouchPort): () => void {
  let press: Press | null = null;
  let hovered: number | null = null;
  let gathered: (readonly [number, number])[] = [];
  let gatheredInfo: ChartPointer | null = null;
  let ticking = 0;
  let longPress = 0;
  let lastPress: { at: number; point: readonly [number, number]; presses: number } | null = null;
  const fingers = new Set<number>();

  function place(event: { clientX: number; clientY: number }): readonly [number, number] {
    const box = frame.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  }
  function infoOf(event: PointerEvent | MouseEvent, presses: number): ChartPointer {
    const kind = event instanceof PointerEvent ? event.pointerType : 'mouse';
    return {
      clientX: event.clientX, clientY: event.clientY, shift: event.shiftKey, alt: event.altKey, control: event.ctrlKey || event.metaKey,
      pointer: kind === 'touch' ? 'touch' : kind === 'pen' ? 'pen' : 'mouse', presses,
    };
  }
  function countPresses(event: PointerEvent, at: readonly [number, number]): number {
    const again = lastPress && event.timeStamp - lastPress.at < DOUBLE_PRESS_MS && distance(at, lastPress.point) < 2 * FINGER_SLACK_PX;
    lastPress = { at: event.timeStamp, point: at, presses: again ? lastPress!.presses + 1 : 1 };
    return lastPress.presses;
  }
  function start(now: Press): void {
    now.started = true;
    const stitches = port.stitches(now.from, now.from);
    now.first = stitches[0] ?? null;
    port.stroke('start', stitches, now.info);
  }
  function cancel(): void {
    clearTimeout(longPress);
    const before = press;
    press = null;
    gathered = [];
    if (before?.started) port.stroke('cancel', [], before.info);
  }
  function flush(): void {
    ticking = 0;
    const points = gathered;
    gathered = [];
    if (points.length === 0 || !gatheredInfo) return;
    if (!press) {
      const stitch = port.stitches(points[points.length - 1]!, points[points.length - 1]!)[0] ?? null;
      if (stitch !== hovered) port.point((hovered = stitch), gatheredInfo);
      return;
    }
    if (!press.started) start(press);
    const passed = new Set<number>();
    for (const point of points) {
      for (const stitch of port.stitches(press.last, point)) passed.add(stitch);
      press.last = point;
    }
    for (const stitch of passed) if (stitch !== press.first) press.left = true;
    port.stroke('move', [...passed], gatheredInfo);
  }

  function down(event: PointerEvent): void {
    if (event.pointerType === 'touch') fingers.add(event.pointerId);
    if (press || fingers.size > 1) return cancel();
    if (event.button !== 0 || port.grabbing()) return;
    const at = place(event);
    const presses = countPresses(event, at);
    press = { id: event.pointerId, from: at, last: at, presses, started: false, left: false, first: null, info: infoOf(event, presses) };
    frame.setPointerCapture(event.pointerId);
    if (event.pointerType !== 'touch') return start(press);
    longPress = window.setTimeout(() => {
      const held = press;
      if (!held || held.started) return;
      cancel();
      port.menu(held.from, held.info);
    }, LONG_PRESS_MS);
  }
  function move(event: PointerEvent): void {
    if (press && event.pointerId !== press.id) return;
    if (!press && (event.pointerType === 'touch' || event.buttons !== 0)) return;
    if (press && !press.started && distance(place(event), press.from) < FINGER_SLACK_PX) return;
    clearTimeout(longPress);
    const passed = press ? event.getCoalescedEvents() : [];
    for (const one of passed.length > 0 ? passed : [event]) gathered.push(place(one));
    gatheredInfo = infoOf(event, press?.presses ?? 0);
    if (ticking === 0) ticking = requestAnimationFrame(flush);
  }
  function up(event: PointerEvent): void {
    fingers.delete(event.pointerId);
    if (!press || event.pointerId !== press.id) return;
    clearTimeout(longPress);
    if (!press.started) start(press);
    if (gathered.length > 0) flush();
    const done = press;
    press = null;
    const info = infoOf(event, done.presses);
    port.stroke('end', [], info);
    if (!done.left && done.first !== null) port.tap(done.first, info);
  }
  function lost(event: PointerEvent): void {
    fingers.delete(event.pointerId);
    if (press && event.pointerId === press.id) cancel();
  }
  function leave(event: PointerEvent): void {
    if (press || hovered === null) return;
    gathered = [];
    port.point((hovered = null), infoOf(event, 0));
  }
  function menu(event: MouseEvent): void {
    event.preventDefault();
    if (fingers.size > 0) return;
    cancel();
    port.menu(place(event), infoOf(event, 1));
  }
  function key(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || !press?.started) return;
    event.stopPropagation();
    cancel();
  }

  const listeners = { pointerdown: down, pointermove: move, pointerup: up, pointercancel: lost, pointerleave: leave, contextmenu: menu } as const;
  for (const [type, listener] of Object.entries(listeners)) frame.addEventListener(type, listener as EventListener);
  window.addEventListener('keydown', key, true);
  return () => {
    clearTimeout(longPress);
    if (ticking !== 0) cancelAnimationFrame(ticking);
    for (const [type, listener] of Object.entries(listeners)) frame.removeEventListener(type, listener as EventListener);
    window.removeEventListener('keydown', key, true);
  };
}

function distance(a: readonly [number, number], b: readonly [number, number]): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
