import type { App, Session, WebContents } from 'electron';
import { isOwnAddress } from './protocol.ts';

/** The page stays where it is: no navigation, no further window, no embedded page. */
export function setupNavigation(app: Pick<App, 'on'>): void {
  app.on('web-contents-created', (_event, contents) => confine(contents));
}

/** Confines one page. */
export function confine(contents: Pick<WebContents, 'on' | 'setWindowOpenHandler'>): void {
  contents.on('will-navigate', (event) => event.preventDefault());
  contents.on('will-frame-navigate', (event) => event.preventDefault());
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

type Guarded = Pick<
  Session,
  'setPermissionRequestHandler' | 'setPermissionCheckHandler' | 'setDevicePermissionHandler' | 'webRequest'
>;

/** The page needs no camera, no place, no device and no network; whatever asks for one is refused. */
export function setupPermissions(session: Guarded): void {
  session.setPermissionRequestHandler((_contents, _permission, callback) => callback(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest((details, callback) => callback({ cancel: !mayRequest(details.url) }));
}

/** `blob:` and `data:` hold what the page itself made (pictures, exports); `devtools:` is the developer's own. */
const OWN_SCHEMES = new Set(['blob:', 'data:', 'devtools:']);

/** Whether a request stays inside the program. */
export function mayRequest(address: string): boolean {
  if (!URL.canParse(address)) return false;
  return isOwnAddress(address) || OWN_SCHEMES.has(new URL(address).protocol);
}
