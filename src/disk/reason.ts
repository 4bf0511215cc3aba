/** What went wrong with a file, in words. */
export function reason(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return (code !== undefined && REASONS[code]) || message;
}

const REASONS: Readonly<Partial<Record<string, string>>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'it may not be read or written',
  EPERM: 'it may not be read or written',
  EROFS: 'the disk can only be read',
  EISDIR: 'this is a folder',
  ENOTDIR: 'a file stands where a folder must be',
  EEXIST: 'a file stands where a folder must be',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the space that you may use on this disk is full',
  EFBIG: 'the disk takes no file of this size',
  ELOOP: 'this is a link that leads to itself',
  ENAMETOOLONG: 'the name is too long',
  EIO: 'the disk does not answer as it should',
};
