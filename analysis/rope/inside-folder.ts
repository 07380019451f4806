/**
 * Why a name in the record may not be followed, or null where it stays inside the rope folder.
 * Names are relative, with '/' or '\'; nothing absolute, no drive, no step upwards, no control characters.
 */
export function leavesFolder(name: string): string | null {
  if ([...name].some((char) => char.charCodeAt(0) < 32)) return 'the name holds control characters';
  const parts = name.split(/[\\/]/);
  if (/^[\\/]/.test(name) || /^[A-Za-z]:/.test(name)) return 'the path is absolute';
  if (/^[A-Za-z][A-Za-z+.-]*:/.test(name)) return 'the name is an address, not a file in the folder';
  if (parts.includes('..')) return "the path steps out of the folder with '..'";
  if (parts.every((part) => part === '' || part === '.')) return 'the name is empty';
  return null;
}
