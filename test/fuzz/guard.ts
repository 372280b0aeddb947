/** Objects that every other one leans on: whoever can change them can change what any code does. */
const SHARED: Readonly<Record<string, object>> = {
  Object: Object.prototype,
  Array: Array.prototype,
  Function: Function.prototype,
  String: String.prototype,
  Number: Number.prototype,
  Map: Map.prototype,
  Set: Set.prototype,
  RegExp: RegExp.prototype,
  Promise: Promise.prototype,
  'the Object function': Object,
  'the Function function': Function,
};

declare global {
  // what hostile texts try to set
  var canary: unknown;
}

const CANARY = 'alive';

/** Takes note of the shared objects and sets a canary; the check throws where anything was changed since. */
export function setGuard(): () => void {
  globalThis.canary = CANARY;
  const before = Object.entries(SHARED).map(([name, object]) => ({ name, object, fields: fieldsOf(object) }));
  const globals = Reflect.ownKeys(globalThis).length;
  const exit = process.exitCode;
  return () => {
    for (const { name, object, fields } of before) {
      const now = Reflect.ownKeys(object);
      const same =
        now.length === fields.length && fields.every(([key, value]) => valueOf(object, key) === value);
      if (!same) throw new Error(`the shared object ${name} was changed: ${now.map(String).join(' ')}`);
    }
    if (globalThis.canary !== CANARY) throw new Error('a text was carried out: the canary was changed');
    if (Reflect.ownKeys(globalThis).length !== globals) throw new Error('a name was added to globalThis');
    if (process.exitCode !== exit) throw new Error('the exit code was changed');
  };
}

const valueOf = (object: object, key: PropertyKey): unknown =>
  Reflect.getOwnPropertyDescriptor(object, key)?.value as unknown;

const fieldsOf = (object: object): readonly (readonly [PropertyKey, unknown])[] =>
  Reflect.ownKeys(object).map((key) => [key, valueOf(object, key)] as const);
