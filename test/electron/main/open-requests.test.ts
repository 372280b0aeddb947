import { EventEmitter } from 'node:events';
import { describe, expect, it } from 'vitest';
import { documentsIn, setupOpenRequests } from '../../../electron/main/open-requests.ts';
import { event } from '../fakes.ts';

describe('documents on a command line', () => {
  it.each([
    [['chipdraft', 'shop.json'], ['/here/shop.json']],
    [['electron', 'dist/electron/main.cjs', '/a/ü "b".json'], ['/a/ü "b".json']],
    [
      ['chipdraft', '--flag=x.json', '-x', 'one.json', '../two.JSON'],
      ['/here/one.json', '/two.JSON'],
    ],
    [['chipdraft', 'file:///a/b%20c.json'], ['/a/b c.json']],
    [['chipdraft', 'file://%zz/x.json', 'https://example.org/x', '/etc/passwd', ''], []],
    [['only-the-program.json'], []],
    [[], []],
  ])('%j', (argv, paths) => expect(documentsIn(argv, '/here')).toEqual(paths));
});

describe('a document opened from outside', () => {
  const begin = (argv: string[]) => {
    const app = new EventEmitter();
    const requests = setupOpenRequests(app as never, argv, '/here');
    const opened: string[] = [];
    let shown = 0;
    const deliver = () =>
      requests.deliverTo(
        (path) => opened.push(path),
        () => shown++,
      );
    return { app, opened, deliver, shown: () => shown };
  };

  it('waits until there is a window, and is opened once', () => {
    const { opened, deliver } = begin(['chipdraft', 'a.json', 'b.json']);
    expect(opened).toEqual([]);
    deliver();
    deliver();
    expect(opened).toEqual(['/here/b.json']);
  });

  it('comes from the file list of macOS, early or late, and replaces an earlier one', () => {
    const { app, opened, deliver } = begin(['chipdraft', 'a.json']);
    const early = event();
    app.emit('open-file', early, '/m/early.json');
    deliver();
    app.emit('open-file', event(), '/m/late.json');
    app.emit('open-file', event(), '/m/picture.png');
    expect([early.prevented, opened]).toEqual([true, ['/m/early.json', '/m/late.json']]);
  });

  it('comes from a second start, whose folder counts, and which brings the window to the front', () => {
    const { app, opened, deliver, shown } = begin(['chipdraft']);
    deliver();
    app.emit('second-instance', event(), ['chipdraft', 'c.json'], '/there');
    app.emit('second-instance', event(), ['chipdraft'], '/there');
    expect([opened, shown()]).toEqual([['/there/c.json'], 2]);
  });
});
