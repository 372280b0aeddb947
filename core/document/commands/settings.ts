import type { ShopDocument } from '../schema.ts';
import { toJson } from '../write.ts';
import type { Handler } from './command.ts';
import { done, Refused } from './command.ts';
import { editValue } from './edit-value.ts';
import { replaceAt } from './items.ts';

function settingAt(document: ShopDocument, name: string): number {
  const index = document.settings.findIndex((setting) => setting.name === name);
  if (index < 0)
    throw new Refused(`no setting is named "${name.slice(0, 80)}"`, 'choose a setting of the list');
  return index;
}

export const addSetting: Handler<'addSetting'> = (document, { setting: name, like }) => {
  const gates = like === undefined ? {} : toJson(document.settings[settingAt(document, like)]!.gates);
  return done(
    editValue(document, ['settings', document.settings.length], { name, gates }),
    `Add setting ${name}`,
    [name],
  );
};

export const renameSetting: Handler<'renameSetting'> = (document, { setting, name }) =>
  done(
    editValue(document, ['settings', settingAt(document, setting), 'name'], name),
    `Rename setting ${setting}`,
  );

export const removeSetting: Handler<'removeSetting'> = (document, { setting }) => {
  const index = settingAt(document, setting);
  const settings = document.settings.filter((_, i) => i !== index);
  return done({ ...document, settings }, `Remove setting ${setting}`);
};

export const setSetting: Handler<'setSetting'> = (document, { setting, gates }) => {
  const index = settingAt(document, setting);
  const next = Object.entries(gates).reduce(
    (shop, [gate, text]) => editValue(shop, ['settings', index, 'gates', gate], text ?? undefined),
    document,
  );
  const changed = next.settings[index]!;
  return done(
    { ...document, settings: replaceAt(document.settings, index, changed) },
    `Change setting ${setting}`,
  );
};

export const setGate: Handler<'setGate'> = (document, { setting, gate, text }) => {
  const path = ['settings', settingAt(document, setting), 'gates', gate];
  return done(editValue(document, path, text ?? undefined), `Set gate ${gate} in ${setting}`);
};
