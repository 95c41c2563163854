const words = (text: string): string => text.trim().split(/\s+/).join(' ');

/** Line numbers by what the line says, the first where several say the same. */
function linesOf(inp: string): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  for (const [index, line] of inp.split(/\r?\n/).entries()) {
    // EPANET repeats a line up to its comment.
    for (const said of [words(line), words(line.split(';')[0] ?? '')])
      if (said !== '' && !numbers.has(said)) numbers.set(said, index + 1);
  }
  return numbers;
}

/** The first few of EPANET's complaints, each with its section (which EPANET names) and the line that it is about. */
export function complaints(report: string, inp: string): string {
  const lines = report.split(/\r?\n/).map((line) => line.trim());
  const numbers = linesOf(inp);
  const found = lines.flatMap((line, index) => {
    const [, said] = /^Error \d+: (.+?):?$/.exec(line) ?? [];
    if (said === undefined || line.startsWith('Error 200')) return [];
    const about = lines[index + 1] ?? '';
    const number = numbers.get(words(about)) ?? null;
    return [number === null ? `${said} ${about}`.trim() : `${said}, line ${number}: ${about}`];
  });
  return found.slice(0, 5).join('; ');
}
