/** Puts a text on the clipboard by the page's own copy event, which asks nobody for leave; says whether it is there. */
export function copyText(text: string): boolean {
  let copied = false;
  const put = (event: ClipboardEvent) => {
    event.clipboardData?.setData('text/plain', text);
    copied = event.clipboardData !== null;
    event.preventDefault();
    // the drawing copies what is selected
    event.stopImmediatePropagation();
  };
  window.addEventListener('copy', put, { capture: true, once: true });
  const asked = document.execCommand('copy');
  window.removeEventListener('copy', put, { capture: true });
  return asked && copied;
}
