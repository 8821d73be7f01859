import type { Page } from '@playwright/test';

/**
 * What of the words of a page can't be read, each with its place: a page, sheet or part of it that scrolls sideways; words that reach out of the
 * window or are cut off by what they stand in; words that lie on other words. Fields that hold what was typed scroll by themselves and are left out,
 * as are drawings; a table may scroll sideways (WCAG 2.2, 1.4.10 excepts it), and so may a single line of choices of which each fits. Words that end in
 * "…" where their title has the whole of them are not cut off.
 */
export function unreadable(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    interface Words {
      readonly text: string;
      readonly in: Element;
      readonly rect: DOMRect;
      /** What it lies on: a menu, a dialog or what sticks to an edge covers what is below it on purpose. */
      readonly layer: Element | null;
    }
    const found: string[] = [];
    const place = (element: Element): string => {
      const own = `${element.tagName.toLowerCase()}${[...element.classList].filter((name) => !name.startsWith('svelte-')).map((name) => `.${name}`).join('')}`;
      return element.parentElement && element.parentElement !== document.body ? `${place(element.parentElement).split(' > ').slice(-3).join(' > ')} > ${own}` : own;
    };
    const short = (text: string): string => `"${text.replace(/\s+/g, ' ').slice(0, 40)}"`;
    const styles = new Map<Element, CSSStyleDeclaration>();
    const style = (element: Element): CSSStyleDeclaration => {
      const known = styles.get(element) ?? getComputedStyle(element);
      styles.set(element, known);
      return known;
    };
    const ancestors = (element: Element): Element[] => (element.parentElement ? [element, ...ancestors(element.parentElement)] : [element]);
    const modal = document.querySelector('dialog:modal');

    const isLineOfChoices = (element: Element): boolean => {
      const items = [...element.querySelectorAll('button, label, select')];
      return items.length > 1 && element.scrollHeight <= element.clientHeight + 1 && element.clientHeight < 200 && items.every((item) => item.getBoundingClientRect().width <= element.clientWidth);
    };

    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth) found.push(`the page is ${root.scrollWidth} px wide in ${root.clientWidth}`);
    for (const element of document.querySelectorAll('body *')) {
      if (element instanceof SVGElement || element.matches('input, textarea, table, :has(> table)') || (modal && !modal.contains(element)) || element.getClientRects().length === 0) continue;
      const { overflowX } = style(element);
      if ((overflowX === 'auto' || overflowX === 'scroll') && element.scrollWidth > element.clientWidth + 1 && !isLineOfChoices(element)) found.push(`${place(element)} scrolls sideways: ${element.scrollWidth} px in ${element.clientWidth}`);
    }

    const words: Words[] = [];
    const walker = document.createTreeWalker(modal ?? document.body, NodeFilter.SHOW_TEXT, (node) => (node.textContent?.trim() ? NodeFilter.FILTER_ACCEPT : NodeFilter.FILTER_SKIP));
    const range = document.createRange();
    while (walker.nextNode()) {
      const node = walker.currentNode;
      const parent = node.parentElement!;
      if (parent.closest('svg, select, script, style, noscript') || ancestors(parent).some((each) => style(each).clipPath === 'inset(50%)') || !parent.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue;
      range.selectNodeContents(node);
      const over = ancestors(parent);
      const layer = over.find((each) => ['sticky', 'fixed'].includes(style(each).position) || each.matches('dialog, [popover]')) ?? null;
      for (const box of range.getClientRects()) {
        if (box.width < 1 || box.height < 1) continue;
        // The ink of a line stands in the middle of its box.
        const rect = new DOMRect(box.x + 1, box.y + box.height * 0.25, Math.max(0, box.width - 2), box.height * 0.5);
        let clip: Element | null = null;
        let isScrolled = false;
        for (const each of over) {
          const { overflowX, overflowY, position } = style(each);
          const at = each.getBoundingClientRect();
          const isOutX = rect.right > at.left + each.clientLeft + each.clientWidth + 1 || rect.left < at.left - 1;
          const isOutY = rect.bottom > at.top + each.clientTop + each.clientHeight + 1 || rect.top < at.top - 1;
          if (overflowX !== 'visible' && overflowX !== 'auto' && overflowX !== 'scroll' && isOutX) clip ??= each;
          if (overflowY !== 'visible' && overflowY !== 'auto' && overflowY !== 'scroll' && isOutY) clip ??= each;
          if ((isOutX && (overflowX === 'auto' || overflowX === 'scroll')) || (isOutY && (overflowY === 'auto' || overflowY === 'scroll'))) isScrolled = true;
          if (clip === each && style(each).textOverflow === 'ellipsis' && each.closest('[title]')?.getAttribute('title')?.includes(node.textContent!.trim())) isScrolled = true;
          if (clip || isScrolled || position === 'fixed' || each === document.body) break;
        }
        if (isScrolled) continue;
        if (clip && clip !== document.body && clip !== root) found.push(`${short(node.textContent!)} is cut off by ${place(clip)}`);
        else if (rect.right > root.clientWidth + 1 || rect.left < -1) found.push(`${short(node.textContent!)} reaches out of the window in ${place(parent)}`);
        else words.push({ text: node.textContent!, in: parent, rect, layer });
      }
    }
    words.sort((a, b) => a.rect.top - b.rect.top);
    words.forEach((one, i) => {
      for (let j = i + 1; j < words.length && words[j]!.rect.top < one.rect.bottom - 1; j++) {
        const other = words[j]!;
        const wide = Math.min(one.rect.right, other.rect.right) - Math.max(one.rect.left, other.rect.left);
        const high = Math.min(one.rect.bottom, other.rect.bottom) - other.rect.top;
        if (wide > 1 && high > 1 && one.layer === other.layer) found.push(`${short(one.text)} and ${short(other.text)} lie on each other in ${place(one.in)} and ${place(other.in)}`);
      }
    });

    const pen = document.createElement('canvas').getContext('2d')!;
    for (const select of document.querySelectorAll('select')) {
      if ((modal && !modal.contains(select)) || !select.checkVisibility({ visibilityProperty: true })) continue;
      const its = style(select);
      pen.font = its.font;
      pen.letterSpacing = its.letterSpacing === 'normal' ? '0px' : its.letterSpacing;
      pen.wordSpacing = its.wordSpacing === 'normal' ? '0px' : its.wordSpacing;
      const text = select.selectedOptions[0]?.text ?? '';
      const roomPx = select.clientWidth - parseFloat(its.paddingLeft) - parseFloat(its.paddingRight);
      if (pen.measureText(text).width > roomPx + 1) found.push(`${short(text)} is cut off by ${place(select)}: ${Math.round(pen.measureText(text).width)} px in ${Math.round(roomPx)}`);
    }
    return [...new Set(found)];
  });
}
