/**
 * The device's small store (localStorage): written at once, so that a reload after a keystroke finds the keystroke.
 * Anything there may be unreadable, cleared or full; none of that may stop a form.
 */
const prefix = 'hsl.';

export function readText(key: string): string | null {
  try {
    return localStorage.getItem(prefix + key);
  } catch {
    return null;
  }
}

/** False when the device would not keep it (full, or forbidden). */
export function writeText(key: string, text: string): boolean {
  try {
    localStorage.setItem(prefix + key, text);
    return true;
  } catch {
    return false;
  }
}

export function readStored(key: string): unknown {
  const text = readText(key);
  try {
    return text === null ? null : (JSON.parse(text) as unknown);
  } catch {
    return null;
  }
}

export const writeStored = (key: string, value: unknown): boolean => writeText(key, JSON.stringify(value));

export function removeStored(key: string): void {
  try {
    localStorage.removeItem(prefix + key);
  } catch {
    // Nothing was kept, so nothing has to go.
  }
}

/** Keys under a name, without the prefix. */
export function storedKeys(under: string): string[] {
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(prefix + under))
      .map((key) => key.slice(prefix.length));
  } catch {
    return [];
  }
}
