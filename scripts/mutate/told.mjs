// The table of rooms and files, and every fault that no test has seen.

/** How many of those that can be seen at all were seen. */
function scoreOf(faults) {
  const can = faults.filter(({ same }) => !same);
  const seen = can.filter(({ by }) => by).length;
  return `${seen} of ${can.length} | ${can.length > 0 ? Math.round((100 * seen) / can.length) : 100} %`;
}

/** A table in Markdown, then the survivors: place, what was changed, its line. */
export function told(results, seed) {
  const by = (key) => Object.entries(grouped(results, key));
  const changed = ({ from, to }) => `${oneLine(from)} → ${oneLine(to)}`;
  return [
    `\n| seed ${seed} | seen | score |\n| --- | --- | --: |`,
    ...by(({ room }) => room).map(([room, faults]) => `| \`src/${room}\` | ${scoreOf(faults)} |`),
    `| together | ${scoreOf(results)} |`,
    '\nby file:',
    ...by(({ file }) => file).map(([file, faults]) => `  ${file}: ${scoreOf(faults).replace(' | ', ', ')}`),
    '\nseen by no test:',
    ...results
      .filter(({ same, by }) => !same && !by)
      .map((fault) => `  ${fault.file}:${fault.line}  ${changed(fault)}    in: ${fault.code}`),
    '\nthe same whether or not, and left out:',
    ...results
      .filter(({ same }) => same)
      .map((fault) => `  ${fault.file}:${fault.line}  ${changed(fault)}: ${fault.same}`),
  ].join('\n');
}

const oneLine = (text) => text.replace(/\s+/g, ' ');

function grouped(things, key) {
  const groups = {};
  for (const thing of things) (groups[key(thing)] ??= []).push(thing);
  return groups;
}
