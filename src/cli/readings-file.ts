/** A gauge's log from the disk, in whatever letters and ends of line its program writes. */
import { createHash } from 'node:crypto';
import { type Disk, reasonOf } from './files.ts';

export interface LoadedLog {
  readonly ok: true;
  readonly text: string;
  /** 32 hex digits that stand for its bytes. */
  readonly digest: string;
}

const LARGEST_BYTES = 64 * 1024 * 1024;

/** Reads a log: UTF-8, UTF-16 with its mark, else Windows-1252, in which a degree sign is most often written. */
export function loadLog(path: string, disk: Disk): LoadedLog | { readonly ok: false; readonly reason: string } {
  try {
    const bytes = disk.readFileSync(path);
    if (bytes.length > LARGEST_BYTES)
      return { ok: false, reason: `it has ${Math.round(bytes.length / 1048576)} MiB; at most 64 MiB are read` };
    return {
      ok: true,
      text: decoded(bytes).replace(/\r\n?/gu, '\n'),
      digest: createHash('sha256').update(bytes).digest('hex').slice(0, 32),
    };
  } catch (error) {
    return { ok: false, reason: reasonOf(error) };
  }
}

function decoded(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
