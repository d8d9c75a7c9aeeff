// How Node finds and reads the window's modules in tests; see load.js.

import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { compileModule } from 'svelte/compiler';
import ts from 'typescript';

/** The window's modules are named without their ending. */
export function resolve(name, context, next) {
  if (name.startsWith('.') && context.parentURL) {
    for (const ending of ['.ts', '.svelte.ts']) {
      const whole = name.endsWith('.svelte') ? `${name}.ts` : name + ending;
      if (existsSync(fileURLToPath(new URL(whole, context.parentURL)))) return next(whole, context);
    }
  }
  return next(name, context);
}

export async function load(url, context, next) {
  if (!url.endsWith('.ts')) return next(url, context);
  const filename = fileURLToPath(url);
  const { outputText } = ts.transpileModule(await readFile(filename, 'utf8'), {
    compilerOptions: {
      target: ts.ScriptTarget.ES2022,
      module: ts.ModuleKind.ESNext,
      verbatimModuleSyntax: true,
    },
  });
  const isRuned = url.endsWith('.svelte.ts');
  const source = isRuned
    ? compileModule(outputText, { filename, generate: 'server' }).js.code
    : outputText;
  return { format: 'module', source, shortCircuit: true };
}
