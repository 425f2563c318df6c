// Licence texts of exactly the packages that esbuild put into a bundle.
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** The nearest folder above a file whose package.json has a name and a version. */
async function packageOf(file) {
  for (let folder = dirname(file); folder !== dirname(folder); folder = dirname(folder)) {
    const text = await readFile(join(folder, 'package.json'), 'utf8').catch(() => undefined);
    const manifest = text === undefined ? {} : JSON.parse(text);
    if (manifest.name && manifest.version) return { folder, manifest };
  }
  throw new Error(`no package for ${file}`);
}

/** Writes the notices of a bundle, our own packages left out. Throws where a package ships no licence. */
export async function writeNotices(metafile, target, own = []) {
  const used = new Map();
  for (const output of Object.values(metafile.outputs)) {
    for (const [file, { bytesInOutput }] of Object.entries(output.inputs)) {
      if (bytesInOutput === 0 || !file.includes('node_modules/')) continue;
      const { folder, manifest } = await packageOf(file);
      if (!own.includes(manifest.name)) used.set(`${manifest.name}@${manifest.version}`, { folder, manifest });
    }
  }
  const parts = [];
  for (const [id, { folder, manifest }] of [...used].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const files = (await readdir(folder)).filter((file) => /^(licen[cs]e|notice|copying)/i.test(file)).sort();
    if (files.length === 0) throw new Error(`${id} (${manifest.license}) ships no licence file: add its text by hand`);
    const texts = await Promise.all(files.map((file) => readFile(join(folder, file), 'utf8')));
    parts.push(
      [`${id} (${manifest.license})`, ...texts.map((text) => text.replaceAll('\r\n', '\n').trim())].join('\n\n'),
    );
  }
  await writeFile(target, `${parts.join(`\n\n${'-'.repeat(72)}\n\n`)}\n`);
  return [...used.keys()].sort();
}
