/**
 * Wakes the bundled extension once, in a fresh process with nothing behind the editor's interface, and prints in
 * milliseconds how long it takes to read the bundle, to activate, and until the language server has answered.
 */
'use strict';
const Module = require('node:module');
const { join } = require('node:path');
const { pathToFileURL } = require('node:url');

const root = join(__dirname, '..', '..');
const nothing = () => undefined;

/** What answers every question about the editor: it can be called, made, extended and asked on, and holds nothing. */
const anything = new Proxy(class {}, {
  get: (target, name) => {
    if (name === 'prototype') return target.prototype;
    if (name === 'then' || name === 'bundle' || name === 'workspaceFolders') return undefined;
    if (name === Symbol.iterator) return [][Symbol.iterator];
    if (name === Symbol.toPrimitive) return () => 0;
    return name === 'length' ? 0 : anything;
  },
  set: () => true,
  apply: () => anything,
  construct: (_target, _values, made) => (made === anything ? anything : Reflect.construct(Object, [], made)),
});

const Uri = {
  joinPath: ({ fsPath }, ...parts) => ({
    ...pathToFileURL(join(fsPath, ...parts)),
    fsPath: join(fsPath, ...parts),
  }),
};

// bundles copy what an interface holds itself and ask its prototype for the rest
const own = { Uri, version: '1.91.0' };
const editor = Object.create(anything, Object.getOwnPropertyDescriptors(own));
const load = Module._load;
Module._load = (name, ...rest) => (name === 'vscode' ? editor : load(name, ...rest));

/** Processor time of this process in milliseconds, which holds on a machine that others use too, and time by the clock. */
function now() {
  const { user, system } = process.cpuUsage();
  return { cpu: (user + system) / 1000, clock: performance.now() };
}

const between = (from, to) => ({ cpu: to.cpu - from.cpu, clock: to.clock - from.clock });

async function wake() {
  const begun = now();
  const extension = require(join(root, 'dist', 'extension.cjs'));
  const read = now();
  await extension.activate({ subscriptions: { push: nothing }, extensionUri: { fsPath: root } });
  const awake = now();
  process.stdout.write(JSON.stringify({ read: between(begun, read), awake: between(begun, awake) }));
  process.exit(0);
}

void wake();
