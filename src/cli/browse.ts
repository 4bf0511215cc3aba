import { spawn } from 'node:child_process';

/** The system's own way to open an address; where there is none, the printed address does. */
export function browse(link: string): void {
  const [command, args] =
    process.platform === 'darwin'
      ? ['open', [link]]
      : process.platform === 'win32'
        ? ['rundll32', ['url.dll,FileProtocolHandler', link]]
        : ['xdg-open', [link]];
  const started = spawn(command as string, args as string[], { stdio: 'ignore', detached: true });
  started.on('error', () => undefined);
  started.unref();
}
