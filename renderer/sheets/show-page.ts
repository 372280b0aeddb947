/**
 * Writes a page into a frame that stands empty. Going to an address is refused there, and so is a style sheet that stands
 * in the text, which is therefore handed over as an object. Nothing in the page runs: the frame is sandboxed.
 */
export function showPage(frame: HTMLIFrameElement, html: string): void {
  const view = frame.contentWindow as (Window & { CSSStyleSheet: typeof CSSStyleSheet }) | null;
  if (!view) return;
  const styles: CSSStyleSheet[] = [];
  const bare = html.replace(/<style>([^]*?)<\/style>/g, (_, css: string) => {
    const sheet = new view.CSSStyleSheet();
    sheet.replaceSync(css);
    styles.push(sheet);
    return '';
  });
  const parsed = new DOMParser().parseFromString(bare, 'text/html');
  // it is for the file; the frame has a stricter one of its own
  for (const policy of parsed.querySelectorAll('meta[http-equiv]')) policy.remove();
  const page = view.document;
  const { scrollTop } = page.documentElement;
  page.replaceChild(page.adoptNode(parsed.documentElement), page.documentElement);
  page.adoptedStyleSheets = styles;
  page.documentElement.scrollTop = scrollTop;
}
