import { statfsSync } from 'node:fs';

/**
 * What kind of network or foreign drive a folder lies on, or nothing for a disk of this machine. SQLite's write-ahead
 * log needs memory shared between its users and does not work over a network (sqlite.org/wal.html, "Overview", point 2
 * of the drawbacks).
 */
export function networkDriveOf(folder: string): string | undefined {
  if (isShareName(folder)) return 'a shared folder';
  return networkDriveName(statfsSync(folder).type);
}

/** By the number Linux gives the file system (statfs(2); include/uapi/linux/magic.h). */
export function networkDriveName(fileSystem: number): string | undefined {
  return NAMES.get(fileSystem >>> 0);
}

/** Whether a path names a Windows share, `\\server\share`. */
export function isShareName(path: string): boolean {
  return /^(\\\\|\/\/)[^\\/?.]+[\\/]/.test(path);
}

const NAMES: ReadonlyMap<number, string> = new Map([
  [0x6969, 'NFS'],
  [0x517b, 'SMB'],
  [0xfe534d42, 'SMB'],
  [0xff534d42, 'CIFS'],
  [0x01021997, '9P (a folder of the host machine)'],
  [0x65735546, 'FUSE (a drive that may be a network drive)'],
  [0x00c36400, 'Ceph'],
  [0x5346414f, 'AFS'],
]);
