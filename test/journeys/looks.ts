import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect } from 'vitest';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly impact: string | null;
    readonly help: string;
    readonly nodes: readonly { readonly target: readonly unknown[]; readonly failureSummary?: string }[];
  }[];
}

/** axe finds nothing serious on what is shown. */
export async function accessible(page: Page, what: string): Promise<void> {
  expect(await barriers(page), `axe on ${what}`).toEqual([]);
}

/** Serious and critical findings of axe, in words. */
export async function barriers(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const found = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(options: object): Promise<AxeResult> } };
    return (await axe.run({ resultTypes: ['violations'] })).violations;
  });
  return found
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, help, nodes }) => {
      const where = nodes.slice(0, 3).map((n) => `${String(n.target)}: ${n.failureSummary ?? ''}`);
      return `${id}: ${help}\n${where.join('\n')}`;
    });
}

/** Nothing is wider than the window, the parts of the frame do not lie on each other, and no text is cut unsaid. */
export async function tidy(page: Page, what: string): Promise<void> {
  expect(await untidiness(page), `frame of ${what}`).toEqual([]);
}

/** What is wrong with how the page is laid out, in words. */
export function untidiness(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const said: string[] = [];
    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth)
      said.push(`page scrolls sideways: ${root.scrollWidth} > ${root.clientWidth}`);
    if (root.scrollHeight > root.clientHeight + 1)
      said.push(`page scrolls down: ${root.scrollHeight} > ${root.clientHeight}`);

    const parts = ['header.top', 'nav.bar', 'main > section', 'main > aside', 'footer'].flatMap((where) => {
      const element = document.querySelector(where);
      return element ? [{ where, box: element.getBoundingClientRect() }] : [];
    });
    if (parts.length !== 5) said.push(`a part of the frame is missing: ${parts.map((p) => p.where).join()}`);
    for (const [i, a] of parts.entries()) {
      if (a.box.left < -1 || a.box.right > innerWidth + 1 || a.box.bottom > innerHeight + 1) {
        said.push(`${a.where} stands out of the window`);
      }
      for (const b of parts.slice(i + 1)) {
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        if (wide > 1 && high > 1) said.push(`${a.where} lies on ${b.where} by ${wide} by ${high}`);
      }
    }
    const screen = parts.find((p) => p.where === 'main > section');
    if (screen && (screen.box.width < 240 || screen.box.height < 120)) {
      said.push(`the screen is only ${screen.box.width} by ${screen.box.height}`);
    }

    const TEXTS =
      'button, h1, h2, h3, h4, label, th, dt, dd, summary, caption, legend, [role=tab], [role=radio], p, .name';
    for (const element of document.querySelectorAll<HTMLElement>(TEXTS)) {
      if (!element.checkVisibility({ visibilityProperty: true }) || element.closest('.visually-hidden'))
        continue;
      const style = getComputedStyle(element);
      if (style.display === 'inline' || element.clientWidth === 0) continue;
      if (element.scrollWidth <= element.clientWidth + 1) continue;
      const shortened = style.textOverflow === 'ellipsis' && element.closest('[title]') !== null;
      const scrolls = style.overflowX === 'auto' || style.overflowX === 'scroll';
      if (!shortened && !scrolls) {
        said.push(
          `cut: <${element.tagName.toLowerCase()} ${element.className}> "${element.innerText.slice(0, 60)}" ${element.scrollWidth} > ${element.clientWidth}`,
        );
      }
    }
    return said;
  });
}
