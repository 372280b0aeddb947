import { quantityOf } from '../../core/document/quantity-of.ts';
import { systemCurve } from '../../core/network/system-curve.ts';
import { openShop, solveSetting } from '../../core/network/solve.ts';
import type { Workbench } from '../../core/network/solve.ts';
import { settingNames } from '../../core/network/apply-setting.ts';
import type { FromBench, ToBench } from './bench-messages.ts';
import type { FromSolver, ToSolver } from './solver-messages.ts';

const port = self as unknown as {
  onmessage: ((event: MessageEvent<ToSolver | ToBench>) => void) | null;
  postMessage(message: FromSolver | FromBench): void;
};

let bench: Workbench | null = null;

/** The same shop with one fan at a share of its speed; null where that fan has no speed. */
function atSpeed({ shop }: Workbench, id: string, share: number): Workbench | null {
  const things = shop.document.things.map((thing) => {
    if (thing.id !== id || thing.kind !== 'fan' || !thing.curve.speed) return thing;
    const now = thing.speed ?? thing.curve.speed;
    return { ...thing, speed: quantityOf('speed', now.si * share) };
  });
  const opened = openShop({ ...shop.document, things });
  return opened.ok ? opened.bench : null;
}

// one setting is solved and sent before the next, so that the one on screen is there first
port.onmessage = ({ data }) => {
  // the fan bench has a worker to itself that runs this same file, so that the solver is loaded once
  if (data.kind === 'fan' || data.kind === 'compare' || data.kind === 'chance') {
    void import('./bench-answers.ts').then(({ answer }) => answer(data, (said) => port.postMessage(said)));
    return;
  }
  const started = performance.now();
  try {
    if (data.kind === 'solve') {
      const opened = openShop(data.document, bench);
      if (!opened.ok) {
        port.postMessage({ kind: 'problems', serial: data.serial, problems: opened.problems });
        return;
      }
      bench = opened.bench;
      const names = settingNames(data.document);
      const first = names.includes(data.setting) ? data.setting : names[0]!;
      const order = [first, ...names.filter((name) => name !== first)];
      order.forEach((name, i) => {
        const result = solveSetting(opened.bench, name);
        port.postMessage({
          kind: 'setting',
          serial: data.serial,
          result,
          air: opened.bench.shop.air,
          last: i === order.length - 1,
          took_ms: performance.now() - started,
        });
      });
    } else {
      // every question is answered, or the page would wait for ever
      const fan = bench?.shop.fans.find((f) => f.thing.id === data.fan) ?? bench?.shop.fans[0];
      const other = bench && fan && data.speed !== 1 ? atSpeed(bench, fan.thing.id, data.speed) : bench;
      const curve = other && fan ? systemCurve(other, data.setting, fan.thing.id) : null;
      port.postMessage({ kind: 'curve', serial: data.serial, curve });
    }
  } catch (cause) {
    const message = cause instanceof Error ? cause.message : String(cause);
    port.postMessage({
      kind: 'problems',
      serial: data.serial,
      problems: [
        { path: '', message: `the solver met a fault of its own: ${message}`, remedy: 'undo, and report it' },
      ],
    });
  }
};
