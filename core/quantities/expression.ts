import type { ConstantNode, MathNode, OperatorNode, ParenthesisNode, SymbolNode } from 'mathjs';
import { create, parseDependencies } from 'mathjs/number';
import { dimensionOf, DIMENSIONS, withArticle, type Dimension } from './dimensions.ts';
import { isPure, raisePowers, samePowers, type Powers } from './powers.ts';
import { Refusal } from './quantity-error.ts';
import { quote, type Token } from './tokens.ts';
import { divideMeasures, multiplyMeasures, TEMPERATURE_SCALES, UNITS, type Measure } from './units.ts';

/** A value that a field may use by name. */
export interface NamedValue {
  /** SI value; rpm for a rotation speed. */
  readonly si: number;
  readonly dimension: Dimension;
}

export type NamedValues = ReadonlyMap<string, NamedValue>;

/**
 * The grammar alone, in its build for plain numbers: 40 kB zipped and about 25 ms to load, against 90 kB and 150 ms
 * with its general build and its own units. The tree that it returns is data; nothing of it is compiled or run.
 */
const { parse: parseTree } = create(parseDependencies!);

const DEEPEST_TREE = 120;
const HIGHEST_EXPONENT = 12;

/** Value of the tokens. Every word must be a unit or a named value, and every node one of six plain kinds. */
export function evaluate(tokens: readonly Token[], names: NamedValues): Measure {
  tokens.forEach((token, position) => {
    if (token.kind === 'word') refuseUnknown(token.text, tokens[position + 1]?.text === '(', names);
  });
  const simple = readSimple(tokens, names);
  if (simple !== undefined) return simple;
  const hasNumber = tokens.some(({ kind, text }) => kind === 'number' || kind === 'group' || names.has(text));
  const tree = readTree(tokens);
  if (!hasNumber) throw new Refusal('syntax', 'a number is missing');
  return walk(tree, names, 0);
}

/** A number, a number and a word, or a name alone: most fields hold no more, and that needs no grammar. */
function readSimple([first, word, ...rest]: readonly Token[], names: NamedValues): Measure | undefined {
  if (first === undefined || rest.length > 0) return undefined;
  if (first.kind === 'word') {
    return word === undefined && !UNITS.has(first.text) ? valueOf(first.text, names) : undefined;
  }
  if (first.kind !== 'number') return undefined;
  const value = Number(first.text);
  // `2 1/2` is one token, and a sum
  if (Number.isNaN(value)) return undefined;
  const number = plain(value);
  if (word === undefined) return number;
  return word.kind === 'word' ? finite(multiplyMeasures(number, valueOf(word.text, names))) : undefined;
}

function readTree(tokens: readonly Token[]): MathNode {
  // `in` is an operator of the grammar; `inch` is a plain word.
  const text = tokens.map((token) => (token.text === 'in' ? 'inch' : token.text)).join(' ');
  try {
    return parseTree!(text);
  } catch (cause) {
    throw new Refusal('syntax', '', { cause });
  }
}

function refuseUnknown(word: string, isCall: boolean, names: NamedValues): void {
  if (TEMPERATURE_SCALES.has(word))
    throw new Refusal('not-allowed', 'a temperature is one number and one unit');
  if (names.get(word)?.dimension === 'temperature') {
    throw new Refusal('not-allowed', `the temperature ${quote(word)} cannot be reckoned with`);
  }
  if (isCall) throw new Refusal('not-allowed', `${quote(word)} before a bracket; write * to multiply`);
  if (UNITS.has(word) || names.has(word)) return;
  const near = [...UNITS.keys(), ...names.keys()].find((name) => name.toLowerCase() === word.toLowerCase());
  throw new Refusal('unknown-name', quote(word) + (near === undefined ? '' : `, perhaps ${near}`));
}

function walk(node: MathNode, names: NamedValues, depth: number): Measure {
  if (depth > DEEPEST_TREE) throw new Refusal('too-long', 'it is nested too deeply');
  switch (node.type) {
    case 'ConstantNode':
      return plain((node as ConstantNode).value);
    case 'SymbolNode':
      return valueOf((node as SymbolNode).name, names);
    case 'ParenthesisNode':
      return walk((node as ParenthesisNode).content, names, depth + 1);
    case 'OperatorNode':
      return operate(node as OperatorNode, names, depth + 1);
    default:
      throw new Refusal('not-allowed', 'numbers, units, named values and + - * / ^ ( ) are read');
  }
}

function plain(value: unknown): Measure {
  if (typeof value !== 'number') throw new Refusal('not-allowed', 'only numbers are read');
  return finite({ numerator: value, denominator: 1, powers: {} });
}

function valueOf(name: string, names: NamedValues): Measure {
  const unit = UNITS.get(name);
  if (unit !== undefined) return unit;
  const named = names.get(name);
  if (named === undefined) throw new Refusal('unknown-name', quote(name));
  return finite({ numerator: named.si, denominator: 1, powers: DIMENSIONS[named.dimension].powers });
}

type Operation = (left: Measure, right: Measure) => Measure;

const OPERATIONS: ReadonlyMap<string, Operation> = new Map<string, Operation>([
  ['add', (left, right) => sum(left, right, 1)],
  ['subtract', (left, right) => sum(left, right, -1)],
  ['multiply', multiplyMeasures],
  ['divide', divideMeasures],
  ['pow', raise],
]);

function operate(node: OperatorNode, names: NamedValues, depth: number): Measure {
  const [first, second] = node.args as MathNode[];
  const fn: string = node.fn;
  if (second === undefined) {
    if (fn !== 'unaryMinus' && fn !== 'unaryPlus') throw new Refusal('not-allowed', quote(node.op));
    const value = walk(first!, names, depth);
    return fn === 'unaryPlus' ? value : { ...value, numerator: -value.numerator };
  }
  const operation = OPERATIONS.get(fn);
  if (operation === undefined) throw new Refusal('not-allowed', quote(node.op));
  if (node.implicit && second.type === 'ConstantNode') {
    throw new Refusal('syntax', 'write + or * before the second number');
  }
  if (fn === 'add' || fn === 'subtract') [first!, second].forEach(refuseBareUnit);
  return finite(operation(walk(first!, names, depth), walk(second, names, depth)));
}

/** `2 ft + in` has lost a number; one inch is not guessed. */
function refuseBareUnit(node: MathNode): void {
  if (node.type === 'SymbolNode' && UNITS.has((node as SymbolNode).name)) {
    throw new Refusal('syntax', `${quote((node as SymbolNode).name)} has no number`);
  }
}

function sum(left: Measure, right: Measure, sign: 1 | -1): Measure {
  if (!samePowers(left.powers, right.powers)) throw unlike(left.powers, right.powers);
  const same = left.denominator === right.denominator;
  return {
    numerator: same
      ? left.numerator + sign * right.numerator
      : left.numerator / left.denominator + (sign * right.numerator) / right.denominator,
    denominator: same ? left.denominator : 1,
    powers: left.powers,
  };
}

function unlike(left: Powers, right: Powers): Refusal {
  if (isPure(left) || isPure(right)) {
    return new Refusal(
      'needs-unit',
      `adds ${describe(isPure(left) ? right : left)} and a number without a unit`,
    );
  }
  return new Refusal('wrong-dimension', `adds ${describe(left)} and ${describe(right)}`);
}

function raise(base: Measure, exponent: Measure): Measure {
  if (!isPure(exponent.powers)) throw new Refusal('wrong-dimension', 'has an exponent with a unit');
  const power = exponent.numerator / exponent.denominator;
  if (!isPure(base.powers) && !(Number.isInteger(power) && Math.abs(power) <= HIGHEST_EXPONENT)) {
    throw new Refusal('not-allowed', `a unit takes whole exponents up to ${HIGHEST_EXPONENT}`);
  }
  return {
    numerator: base.numerator ** power,
    denominator: base.denominator ** power,
    powers: raisePowers(base.powers, power),
  };
}

/** SI value of a measure, refused where it is not finite. */
export function siValue({ numerator, denominator }: Measure): number {
  const value = numerator / denominator;
  if (!Number.isFinite(value)) throw new Refusal('not-finite');
  return value === 0 ? 0 : value;
}

function finite(measure: Measure): Measure {
  siValue(measure);
  return measure;
}

/** What a kind is called, for messages. */
export function describe(powers: Powers): string {
  const dimension = dimensionOf(powers);
  return dimension === undefined ? 'a kind of quantity that no field takes' : withArticle(dimension);
}
