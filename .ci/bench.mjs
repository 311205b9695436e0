// npm run bench: runs each tests/bench/*.bench.ts; each prints one JSON line {name, value, unit, goal?, goalAtLeast?, n?} a number.
import { spawnSync } from 'node:child_process';
import console from 'node:console';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { build, checkNode, installPackages, installPrograms, root } from './setup.mjs';

const asJson = process.argv.includes('--json');
const only = process.argv.slice(2).filter((each) => !each.startsWith('-'));

checkNode();
installPackages();
installPrograms();
build();

const folder = path.join(root, 'tests', 'bench');
const files = readdirSync(folder).filter(
  (each) => each.endsWith('.bench.ts') && (only.length === 0 || only.includes(each.split('.')[0])),
);
const numbers = [];
let hasFailed = false;
for (const file of files) {
  if (!asJson) console.error(`measuring ${file} ...`);
  const args = [path.join(root, 'node_modules/tsx/dist/cli.mjs'), path.join(folder, file)];
  const { status, stdout, stderr } = spawnSync(process.execPath, args, {
    cwd: root,
    encoding: 'utf8',
  });
  const lines = stdout.split('\n').filter((line) => line.startsWith('{'));
  numbers.push(...lines.map((line) => JSON.parse(line)));
  if (status !== 0) {
    hasFailed = true;
    console.error(`${file} failed:\n${stdout}${stderr}`);
  }
}

const figure = (value) =>
  Math.abs(value) >= 100 ? value.toFixed(0) : Number(value.toPrecision(3)).toString();

if (asJson) {
  console.log(JSON.stringify(numbers, null, 2));
} else {
  const width = Math.max(...numbers.map(({ name }) => name.length));
  for (const { name, value, unit, goal, goalAtLeast } of numbers) {
    const isMet = !(value > goal) && !(value < goalAtLeast);
    const goals =
      (goal === undefined ? '' : `   goal: under ${goal}`) +
      (goalAtLeast === undefined ? '' : `   goal: at least ${goalAtLeast}`);
    const verdict = `${goals}${isMet ? '' : '   NOT MET'}`;
    console.log(`${name.padEnd(width)}  ${figure(value).padStart(8)} ${unit}${verdict}`);
  }
}
process.exitCode = hasFailed ? 1 : 0;
