import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';

/** The bytes of the faces that are embedded, and of the two that stand in for signs those lack. */
export interface FontBytes {
  regular: Uint8Array;
  strong: Uint8Array;
  emphasis: Uint8Array;
  fallback: Uint8Array;
  fallbackStrong: Uint8Array;
}

const files: Record<keyof FontBytes, string> = {
  regular: '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  strong: '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
  emphasis: '@expo-google-fonts/source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf',
  fallback: 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf',
  fallbackStrong: 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf',
};

/** Reads the fonts from their two packages; one of the few places where the renderers touch a file. */
export async function loadFonts(): Promise<FontBytes> {
  const require = createRequire(import.meta.url);
  const entries = await Promise.all(
    Object.entries(files).map(async ([name, file]) => [name, await readFile(require.resolve(file))] as const),
  );
  return Object.fromEntries(entries) as unknown as FontBytes;
}
