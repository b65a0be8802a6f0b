/** Finds a browser that can be driven here: the one inside an npm package on Linux x64, else an installed one. */
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

const ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
];

const INSTALLED = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
];

/** The ways to launch, the most dependable first; each is a set of launch options for Playwright. */
async function candidates() {
  const found = [];
  if (process.env.DRAFTWRIGHT_BROWSER) found.push({ executablePath: process.env.DRAFTWRIGHT_BROWSER });
  if (process.platform === 'linux' && process.arch === 'x64') {
    const packed = (await import('@sparticuz/chromium')).default;
    const executablePath = await packed.executablePath().catch(() => undefined);
    if (executablePath)
      found.push({ executablePath, args: packed.args.filter((flag) => /swiftshader/.test(flag)) });
  }
  INSTALLED.filter(existsSync).forEach((executablePath) => found.push({ executablePath }));
  return [...found, { channel: 'chrome' }, { channel: 'msedge' }];
}

/** Launches the first browser that starts. Answers { browser } or { reasons } when none does. */
export async function launchBrowser({ headless = true } = {}) {
  /** @type {string[]} */
  const reasons = [];
  for (const { args = [], ...choice } of await candidates()) {
    try {
      return { browser: await chromium.launch({ ...choice, headless, args: [...ARGUMENTS, ...args] }) };
    } catch (fault) {
      reasons.push(`${choice.executablePath ?? choice.channel}: ${String(fault.message).split('\n')[0]}`);
    }
  }
  return { reasons };
}
