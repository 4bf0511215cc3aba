import { counted } from '../../length/counted.js';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { BenchState } from '../state/bench.js';
import type { Shown } from '../plan/answer.js';
import type { SpaceView } from './scene.js';

const HEIGHT = 360;
/** A key turns the board by so much, radians. */
const TURN = Math.PI / 24;

/** The board in 3D with the chambers in it. Its drawing library is loaded when this is unfolded, not before. */
export function Space({ state, shown }: { readonly state: BenchState; readonly shown: Shown }) {
  const [isOpen, setOpen] = useState(false);
  const [said, setSaid] = useState('');
  const canvas = useRef<HTMLCanvasElement>(null);
  const [view, setView] = useState<SpaceView | undefined>(undefined);

  useEffect(() => {
    const element = canvas.current;
    if (!isOpen || !element) return;
    let made: SpaceView | undefined;
    let isGone = false;
    setSaid('Loading the 3D view …');
    import('./scene.js')
      .then(({ spaceView }) => {
        if (isGone) return;
        made = spaceView(element);
        made.resize(element.clientWidth, HEIGHT);
        setView(made);
        setSaid('');
      })
      .catch(() => setSaid('This browser cannot show the 3D view (no WebGL). Everything else works without it.'));
    const observer = new ResizeObserver(() => made?.resize(Math.max(1, element.clientWidth), HEIGHT));
    observer.observe(element);
    return () => {
      isGone = true;
      observer.disconnect();
      made?.close();
      setView(undefined);
    };
  }, [isOpen]);
  useEffect(() => view?.show(shown, state.chamber), [view, shown, state.chamber]);

  return (
    <details class="card" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>3D view</summary>
      {isOpen && (
        <>
          <p role="status">{said}</p>
          <canvas
            ref={canvas}
            class="space"
            tabindex={0}
            role="img"
            aria-label={`${shown.result.job} in 3D, ${counted(shown.result.chambers.length, 'chamber')}. Arrow keys turn it`}
            onKeyDown={(event) => {
              const turns = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
              const turn = turns[event.key as keyof typeof turns];
              if (!turn) return;
              event.preventDefault();
              view?.turn(turn[0]! * TURN, turn[1]! * TURN);
            }}
          />
        </>
      )}
    </details>
  );
}
