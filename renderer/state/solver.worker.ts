import { quantityOf } from '../../core/document/quantity-of.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import { systemCurve } from '../../core/network/system-curve.ts';
import { openShop } from '../../core/network/solve.ts';
import type { Workbench } from '../../core/network/solve.ts';
import type { FromBench, ToBench } from './bench-messages.ts';
import { patched } from './document-patch.ts';
import { faultOf, SolverBench } from './solver-bench.ts';
import type { FromPaper, ToPaper } from './paper-messages.ts';
import type { FromSolver, ToSolver } from './solver-messages.ts';

const port = self as unknown as {
  onmessage: ((event: MessageEvent<ToSolver | ToBench | ToPaper>) => void) | null;
  postMessage(message: FromSolver | FromBench | FromPaper): void;
};

const solver = new SolverBench();
/** As the page sent it last. */
let document: ShopDocument | null = null;
/** Whether the bench is that document's. */
let opened = false;

/** The same shop with one fan at a share of its speed; null where that fan has no speed. */
function atSpeed({ shop }: Workbench, id: string, share: number): Workbench | null {
  const things = shop.document.things.map((thing) => {
    if (thing.id !== id || thing.kind !== 'fan' || !thing.curve.speed) return thing;
    const now = thing.speed ?? thing.curve.speed;
    return { ...thing, speed: quantityOf('speed', now.si * share) };
  });
  const made = openShop({ ...shop.document, things });
  return made.ok ? made.bench : null;
}

/** The bench of the document, also where nothing of it was to be solved yet. */
function benchNow(): Workbench | null {
  if (!opened && document) {
    const made = openShop(document, solver.bench);
    solver.bench = made.ok ? made.bench : null;
    opened = true;
  }
  return solver.bench;
}

// one setting is solved and sent before the next, so that the one on screen is there first
port.onmessage = ({ data }) => {
  // nobody is asking: there is nothing to answer to
  if (typeof data !== 'object' || data === null) return;
  // fan bench, upkeep and sheets have workers to themselves that run this same file, so that the solver is loaded once
  if (data.kind === 'paper') {
    void import('./paper-answers.ts').then(({ answerPaper }) =>
      answerPaper(data, (said) => port.postMessage(said)),
    );
    return;
  }
  if (data.kind !== 'solve' && data.kind !== 'curve') {
    void import('./bench-answers.ts').then(({ answer }) => answer(data, (said) => port.postMessage(said)));
    return;
  }
  const { serial } = data;
  try {
    if (data.patch) {
      document = patched(document, data.patch);
      opened = false;
    }
    if (data.kind === 'solve') {
      opened = true;
      solver.solve(document!, data.settings, serial, true, (answer) => port.postMessage(answer));
    } else {
      // every question is answered, or the page would wait for ever
      const bench = benchNow();
      const fan = bench?.shop.fans.find((f) => f.thing.id === data.fan) ?? bench?.shop.fans[0];
      const other = bench && fan && data.speed !== 1 ? atSpeed(bench, fan.thing.id, data.speed) : bench;
      const curve = other && fan ? systemCurve(other, data.setting, fan.thing.id) : null;
      port.postMessage({ kind: 'curve', serial, curve });
    }
  } catch (cause) {
    port.postMessage({ kind: 'problems', serial, problems: [faultOf(cause)] });
  }
};
