export const driveKinds: string[] = [];
export function starterFiles(_kinds: string[]): { name: string; bytes: Uint8Array }[] {
  return [];
}
