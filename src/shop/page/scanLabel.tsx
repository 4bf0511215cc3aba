import { useEffect, useRef } from 'preact/hooks';

/**
 * The browser's own reader of codes (W3C draft, Shape Detection API). Not in every browser, and nowhere over plain
 * HTTP.
 */
interface CodeReader {
  readonly detect: (from: HTMLVideoElement) => Promise<readonly { readonly rawValue: string }[]>;
}
type WithReader = typeof globalThis & { readonly BarcodeDetector?: new (options: { formats: string[] }) => CodeReader };

/**
 * Whether labels can be read in the page. Else the phone's own camera app opens the label's address, or the number is
 * typed.
 */
export function canScan(): boolean {
  return isSecureContext && 'BarcodeDetector' in globalThis && 'mediaDevices' in navigator;
}

/** Looks through the camera until it reads a code. */
export function ScanLabel({ read }: { readonly read: (text: string | undefined) => void }) {
  const video = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    const stopped = new AbortController();
    lookThrough(video.current!, stopped.signal).then(read, () => read(undefined));
    return () => stopped.abort();
  }, []);
  return (
    <div class="scan">
      <video ref={video} muted playsInline />
      <button type="button" onClick={() => read(undefined)}>
        Stop
      </button>
    </div>
  );
}

async function lookThrough(video: HTMLVideoElement, stopped: AbortSignal): Promise<string | undefined> {
  const Reader = (globalThis as WithReader).BarcodeDetector!;
  const reader = new Reader({ formats: ['qr_code'] });
  const stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } });
  try {
    video.srcObject = stream;
    await video.play();
    while (!stopped.aborted) {
      const [code] = await reader.detect(video);
      if (code) return code.rawValue;
      await new Promise((resolve) => setTimeout(resolve, 150));
    }
    return undefined;
  } finally {
    for (const track of stream.getTracks()) track.stop();
  }
}
