import { describe, expect, it } from 'vitest';
import { confine, mayRequest } from '../../../electron/main/navigation.ts';
import { FakeContents, event } from '../fakes.ts';

describe('a page', () => {
  it.each(['will-navigate', 'will-frame-navigate', 'will-redirect', 'will-attach-webview'])(
    'has its %s prevented',
    (name) => {
      const contents = new FakeContents();
      confine(contents as never);
      const asked = event();
      expect(contents.emit(name, asked)).toBe(true);
      expect(asked.prevented).toBe(true);
    },
  );

  it('opens no further window, of whatever address', () => {
    const contents = new FakeContents();
    confine(contents as never);
    for (const url of ['https://example.org/', 'app://chipdraft/index.html', 'about:blank']) {
      expect(contents.opener({ url })).toEqual({ action: 'deny' });
    }
  });
});

describe('a request', () => {
  it.each([
    ['app://chipdraft/assets/a.js', true],
    ['blob:app://chipdraft/1-2', true],
    ['data:image/png;base64,AA==', true],
    ['http://127.0.0.1/', false],
    ['https://example.org/app://chipdraft/', false],
    ['app://other/', false],
    ['file:///etc/passwd', false],
    ['ws://example.org/', false],
    ['not an address', false],
  ])('to %s may pass: %s', (address, passes) => expect(mayRequest(address)).toBe(passes));
});
