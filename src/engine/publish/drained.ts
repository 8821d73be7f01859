/** What a generator of steps returns in the end, its steps taken without a pause. */
export function drained<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
