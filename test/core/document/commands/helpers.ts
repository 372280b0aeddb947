import { applyCommand } from '../../../../core/document/commands/apply.ts';
import type { Command } from '../../../../core/document/commands/command.ts';
import { blankDocument } from '../../../../core/document/commands/defaults.ts';
import type { ShopDocument } from '../../../../core/document/schema.ts';

/** Carries commands out one after the other; each must succeed. */
export function after(document: ShopDocument, ...commands: Command[]): ShopDocument {
  return commands.reduce((shop, command) => {
    const result = applyCommand(shop, command);
    if (!result.ok) throw new Error(`${command.kind}: ${result.message}`);
    return result.document;
  }, document);
}

/** The refusal of a command that must fail. */
export function refusal(document: ShopDocument, command: Command): { message: string; remedy: string } {
  const result = applyCommand(document, command);
  if (result.ok) throw new Error(`${command.kind} was carried out`);
  return result;
}

export const thing = (document: ShopDocument, id: string) => {
  const found = document.things.find((one) => one.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};

export const run = (document: ShopDocument, id: string) => {
  const found = document.runs.find((one) => one.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};

/** A port and a fan joined by R1, 6 m along and 2 m across, with the fan blowing into the room. */
export const simpleShop = (): ShopDocument =>
  after(
    blankDocument('si'),
    { kind: 'place', thing: 'port', at: { x: 0, y: 0, z: 1 } },
    { kind: 'place', thing: 'fan', at: { x: 6, y: 2, z: 1 } },
    { kind: 'place', thing: 'exhaust', at: { x: 8, y: 2, z: 1 } },
    {
      kind: 'drawRun',
      from: { thing: 'port-1' },
      to: { thing: 'fan-1', end: 'in' },
      corners: [
        { x: 4, y: 0 },
        { x: 4, y: 2 },
      ],
    },
    { kind: 'drawRun', from: { thing: 'fan-1', end: 'out' }, to: { thing: 'exhaust-1' }, corners: [] },
  );
