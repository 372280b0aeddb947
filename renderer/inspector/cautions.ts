import { DUST_CLASSES } from '../../core/catalogue/dusts.ts';
import { MESSAGES } from '../../core/checks/messages.ts';
import type { FindingCode } from '../../core/checks/messages.ts';
import type { Item } from '../../core/document/commands/items.ts';
import { isHose, materialsOf } from '../../core/document/route.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import type { Thing } from '../../core/document/schema-things.ts';

const ROTOR =
  'A rotor that breaks throws its pieces through wood and sheet metal. Keep a closed guard round it, stay out of its plane, and never run it faster than it was made for.';

const words = (code: FindingCode): string => `${MESSAGES[code].message} ${MESSAGES[code].remedy}`;

/** A dust that nobody named may be any, and most of what a shop makes can burn. */
function burns(document: ShopDocument, dust: string | undefined): boolean {
  const own = document.dusts.find(({ id }) => id === dust);
  return own?.combustible ?? DUST_CLASSES[dust as keyof typeof DUST_CLASSES]?.combustible ?? true;
}

function ofThing(document: ShopDocument, thing: Thing): string[] {
  const shopBurns = document.things.some((t) => t.kind === 'port' && burns(document, t.dust));
  switch (thing.kind) {
    case 'fan':
      return [ROTOR];
    case 'port':
      return burns(document, thing.dust) ? [words('caution-combustible')] : [];
    case 'cyclone':
    case 'bin':
      return [words('caution-collapse'), ...(shopBurns ? [words('caution-combustible')] : [])];
    case 'filter':
      return [words('caution-fine-dust'), ...(shopBurns ? [words('caution-combustible')] : [])];
    case 'exhaust':
      return [words(thing.to === 'outside' ? 'caution-make-up-air' : 'caution-fine-dust')];
    default:
      return [];
  }
}

/** What may hurt somebody at this very part, whatever its figures say. */
export function cautionsOf(document: ShopDocument, item: Item): string[] {
  if (item.kind === 'thing') return ofThing(document, item.thing);
  if (item.kind === 'run' && materialsOf(item.run).some(isHose)) {
    return [words('caution-collapse'), words('caution-static')];
  }
  return [];
}
