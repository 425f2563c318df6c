// Licence notices: whatever is bundled into the command must be named with its licence beside it.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { Metafile } from 'esbuild';

/** name@version of every package from the registry that gave bytes to a bundle. */
export function bundledPackages(metafile: Metafile, folder: string): string[] {
  const found = new Set<string>();
  for (const { inputs } of Object.values(metafile.outputs)) {
    for (const [file, { bytesInOutput }] of Object.entries(inputs)) {
      if (bytesInOutput > 0 && file.includes('node_modules/')) found.add(packageOf(resolve(folder, file)));
    }
  }
  return [...found].sort();
}

/** The nearest folder above a file whose package.json has a name and a version. */
function packageOf(file: string): string {
  for (let folder = dirname(file); folder !== dirname(folder); folder = dirname(folder)) {
    const path = join(folder, 'package.json');
    if (!existsSync(path)) continue;
    const { name, version } = JSON.parse(readFileSync(path, 'utf8')) as { name?: string; version?: string };
    if (name !== undefined && version !== undefined) return `${name}@${version}`;
  }
  throw new Error(`no package for ${file}`);
}

/** What is wrong with the notices: a package that is not named, or is named without the text of its licence. */
export function noticeFaults(packages: readonly string[], notices: string): string[] {
  const faults: string[] = [];
  const lines = notices.split('\n');
  for (const id of packages) {
    const start = lines.findIndex((line) => line === id || line.startsWith(`${id} `));
    if (start < 0) {
      faults.push(`${id} is not named`);
      continue;
    }
    const rest = lines.slice(start + 1);
    const next = rest.findIndex((line) => /^(?:@[\w.-]+\/)?[\w.-]+@\d+\.\d+\.\d+/.test(line));
    const text = rest.slice(0, next < 0 ? undefined : next).join('\n');
    if (!/permission|licen[cs]e|redistribution/i.test(text)) faults.push(`${id} is named without its licence`);
  }
  return faults;
}
