// The licences of what is bundled. Each bundle carries its own in THIRD-PARTY.txt, so that a copy of it is complete; what
// is in it is asked of the bundler, as neither package.json nor the lock file tells what was bundled.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export const NOTICES_FILE = 'THIRD-PARTY.txt';

const INSIDE = /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/@][^\\/]*)[\\/]/;
const LICENCE_FILE = /^(licen[cs]e|copying|notice)([.-].*)?$/i;
const RULE = '-'.repeat(80);

/**
 * The folders of the packages that modules belong to, in order of their names. Modules that the bundler makes itself,
 * a few lines each, and the project's own belong to none.
 *
 * @param {Iterable<string>} modules - paths, as a bundler names them
 */
export function packagesOf(modules) {
  const folders = [...modules].flatMap((id) => (id.startsWith('\0') ? [] : (INSIDE.exec(id)?.[1] ?? [])));
  return [...new Set(folders)].sort();
}

/**
 * What a package says of its licence.
 *
 * @throws Error if it names none: it may not be handed out.
 */
export function noticeOf(folder) {
  const { name, version, license, author, homepage } = JSON.parse(
    readFileSync(join(folder, 'package.json'), 'utf8'),
  );
  if (typeof license !== 'string' || license === '' || license === 'UNLICENSED') {
    throw new Error(`the package ${name} ${version} names no licence, so that it may not be bundled`);
  }
  const by = typeof author === 'string' ? author : author?.name;
  const texts = readdirSync(folder)
    .filter((file) => LICENCE_FILE.test(file))
    .sort()
    .map((file) => readFileSync(join(folder, file), 'utf8').trim());
  return { name, version, licence: license, by: by ?? null, homepage: homepage ?? null, texts };
}

/** The notices of packages as one text, in the order of their folders. */
export function noticesText(folders) {
  const notices = folders.map(noticeOf);
  const entries = notices.map(({ name, version, licence, by, homepage, texts }) =>
    [
      RULE,
      `${name} ${version}`,
      `Licence: ${licence}`,
      ...(by === null ? [] : [`By: ${by}`]),
      ...(homepage === null ? [] : [`Home: ${homepage}`]),
      '',
      ...(texts.length > 0 ? texts : ['The package holds no text of its licence.']),
    ].join('\n'),
  );
  const head = `This part of Chipdraft is made with ${notices.length} packages of others, under the licences below.`;
  return `${[head, ...entries].join('\n\n')}\n`;
}

/** Puts the notices of a page beside it: of every module that was read for it, and so also of styles. */
export function noticesPlugin() {
  return {
    name: 'notices',
    apply: 'build',
    enforce: 'post',
    generateBundle() {
      const source = noticesText(packagesOf(this.getModuleIds()));
      this.emitFile({ type: 'asset', fileName: NOTICES_FILE, source });
    },
  };
}
