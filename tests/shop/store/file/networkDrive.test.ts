import { describe, expect, it } from 'vitest';
import { isShareName, networkDriveName, networkDriveOf } from '../../../../src/shop/store/file/networkDrive.js';
import { scratchFolder } from '../scratch.js';

const folder = scratchFolder();

describe('network drives', () => {
  // Numbers from the statfs(2) manual page.
  it('are known by the number of their file system', () => {
    expect(networkDriveName(0x6969)).toBe('NFS');
    expect(networkDriveName(0xff534d42)).toBe('CIFS');
    expect(networkDriveName(0xff534d42 | 0)).toBe('CIFS'); // the same number read as a signed one
    expect(networkDriveName(0xfe534d42)).toBe('SMB');
    expect(networkDriveName(0x65735546)).toMatch('FUSE');
  });

  it('are not ext4, XFS, Btrfs or tmpfs', () => {
    for (const local of [0xef53, 0x58465342, 0x9123683e, 0x01021994]) expect(networkDriveName(local)).toBeUndefined();
    expect(networkDriveOf(folder)).toBeUndefined();
  });

  it('are known by a Windows share name, and a Windows drive is none', () => {
    expect(isShareName('\\\\clubhouse\\boards\\rescue')).toBe(true);
    expect(isShareName('C:\\boards')).toBe(false);
    expect(isShareName('\\\\?\\C:\\boards')).toBe(false);
    expect(isShareName('/boards/rescue')).toBe(false);
  });
});
