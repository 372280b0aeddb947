// Renders build/icons/icon.svg to the pictures that the packager takes; of the largest it makes the icons of Windows
// (.ico) and macOS (.icns) itself. Run after a change of the drawing: node build/scripts/render-icons.mjs
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const FOLDER = fileURLToPath(new URL('../icons', import.meta.url));
const SIZES_px = [16, 32, 48, 64, 128, 256, 512, 1024];

const drawing = readFileSync(join(FOLDER, 'icon.svg'), 'utf8');
const browser = await chromium.launch({
  executablePath: process.env.CHIPDRAFT_CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
try {
  const page = await browser.newPage();
  for (const size of SIZES_px) {
    await page.setViewportSize({ width: size, height: size });
    await page.setContent(`<style>html,body{margin:0}svg{display:block;width:${size}px}</style>${drawing}`);
    const path = join(FOLDER, `${size}x${size}.png`);
    await page.screenshot({ path, omitBackground: true });
    console.log(path);
  }
} finally {
  await browser.close();
}
