/** The editor's setting for severities, as the manifest describes it: one entry a code that can be set. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'prettier';
import { catalogue, isFirm, SETTINGS } from '../../server/checks/index';
import { root } from './sources';

/** The key of what the manifest says of a code. */
export const severityKey = (code: string): string => `severity.${code}`;

/** Codes that can be set, and accepted. */
export const settableCodes = (): readonly string[] =>
  catalogue.map(({ code }) => code).filter((code) => !isFirm(code));

interface Manifest {
  readonly contributes: { configuration?: { title: string; properties: Record<string, unknown> } };
}

const path = join(root, 'package.json');

/** What the manifest has to say of the setting. */
export function severitySetting(): unknown {
  return {
    type: 'object',
    default: {},
    additionalProperties: false,
    markdownDescription: '%setting.severity%',
    properties: Object.fromEntries(
      settableCodes().map((code) => [code, { enum: [...SETTINGS], description: `%${severityKey(code)}%` }]),
    ),
  };
}

/** The setting as the manifest has it. */
export function settingInManifest(): unknown {
  const manifest = JSON.parse(readFileSync(path, 'utf8')) as Manifest;
  return manifest.contributes.configuration?.properties['draftwright.severity'];
}

/** Writes the setting into the manifest, beside whatever else can be set. */
export async function writeSetting(): Promise<void> {
  const manifest = JSON.parse(readFileSync(path, 'utf8')) as Manifest;
  const { configuration } = manifest.contributes;
  manifest.contributes.configuration = {
    title: 'Draftwright',
    properties: { ...configuration?.properties, 'draftwright.severity': severitySetting() },
  };
  writeFileSync(path, await format(JSON.stringify(manifest), { parser: 'json-stringify' }));
}
