/**
 * Places for labels that want to stand at given heights, moved up or down so that neighbours keep a distance.
 * The order stays; labels that have room stay where they are.
 *
 * @param wanted heights in any unit
 * @param distance least distance between neighbours, same unit
 */
export function spreadApart(wanted: readonly number[], distance: number): number[] {
  const order = [...wanted.keys()].sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  // Labels that touch form a group, which stands in the middle of what its members want.
  const groups: { members: number[]; middle: number }[] = [];
  for (const index of order) {
    groups.push({ members: [index], middle: wanted[index]! });
    while (groups.length > 1 && touches(groups.at(-2)!, groups.at(-1)!, distance)) {
      const upper = groups.pop()!;
      const lower = groups.pop()!;
      const members = [...lower.members, ...upper.members];
      const middle = members.reduce((sum, member) => sum + wanted[member]!, 0) / members.length;
      groups.push({ members, middle });
    }
  }
  const places = wanted.map(() => 0);
  for (const { members, middle } of groups) {
    members.forEach((member, place) => {
      places[member] = middle + (place - (members.length - 1) / 2) * distance;
    });
  }
  return places;
}

function touches(
  lower: { members: number[]; middle: number },
  upper: { members: number[]; middle: number },
  distance: number,
): boolean {
  const half = ((lower.members.length + upper.members.length) / 2) * distance;
  return upper.middle - lower.middle < half - 1e-9;
}
