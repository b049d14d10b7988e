// ESLint's rule for circles between files, type imports included: two files that know each other are one file in two
// halves. `import/no-cycle` of the usual plugin leaves type imports out on purpose, so it would not see most of ours.
import fs from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

/** Relative imports of a file, as absolute paths; read once a run of ESLint (an editor's server sees a saved file anew). */
const known = new Map();
function importsOf(file) {
  const stamp = fs.statSync(file, { throwIfNoEntry: false })?.mtimeMs;
  if (stamp === undefined) return [];
  const kept = known.get(file);
  if (kept?.stamp === stamp) return kept.files;
  const files = ts
    .preProcessFile(fs.readFileSync(file, 'utf8'))
    .importedFiles.map(({ fileName }) => fileName)
    .filter((name) => /^\.\.?\/.*\.tsx?$/.test(name))
    .map((name) => path.resolve(path.dirname(file), name));
  known.set(file, { stamp, files });
  return files;
}

/** The shortest way back from one file to another along imports; null when there is none. */
function wayBack(from, to) {
  const before = new Map([[from, null]]);
  for (const file of before.keys()) {
    if (file === to) {
      const way = [];
      for (let at = file; at !== null; at = before.get(at)) way.unshift(at);
      return way;
    }
    for (const next of importsOf(file)) if (!before.has(next)) before.set(next, file);
  }
  return null;
}

const rule = {
  meta: {
    type: 'problem',
    messages: { circle: 'A circle of imports: {{way}}. Put what both need into a file below them.' },
    schema: [],
  },
  create(context) {
    const here = context.filename;
    const check = (node) => {
      const name = node.source?.value;
      if (typeof name !== 'string' || !name.startsWith('.')) return;
      const way = wayBack(path.resolve(path.dirname(here), name), here);
      if (way === null) return;
      const files = [here, ...way].map((file) => path.relative(context.cwd, file));
      context.report({ node, messageId: 'circle', data: { way: files.join(' → ') } });
    };
    return { ImportDeclaration: check, ExportNamedDeclaration: check, ExportAllDeclaration: check };
  },
};

export default { rules: { 'no-circle': rule } };
