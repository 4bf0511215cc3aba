import {
  AmbientLight,
  BufferAttribute,
  BufferGeometry,
  DirectionalLight,
  DoubleSide,
  ExtrudeGeometry,
  Matrix4,
  Mesh,
  MeshLambertMaterial,
  PerspectiveCamera,
  Scene,
  Shape,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { Shown } from '../plan/answer.js';

/** The board in 3D, standing in a canvas. */
export interface SpaceView {
  /** Shows another plan, or another chosen chamber. */
  show(shown: Shown, chosen: string | undefined): void;
  /** Turns the board about its upright axis and over, radians. */
  turn(around: number, over: number): void;
  resize(width: number, height: number): void;
  close(): void;
}

const COLOURS = { board: 0xe8dcc0, chamber: 0x5b9ec0, chosen: 0xd02050 };

/**
 * Draws the finished surface, glassy, with the chambers in it.
 *
 * @throws where the browser has no WebGL
 */
export function spaceView(canvas: HTMLCanvasElement): SpaceView {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
  const scene = new Scene();
  const camera = new PerspectiveCamera(35, 2, 10, 40_000);
  camera.up.set(0, 0, 1);
  const controls = new OrbitControls(camera, canvas);
  const light = new DirectionalLight(0xffffff, 1.6);
  scene.add(new AmbientLight(0xffffff, 1.4), light);
  let surface: { readonly board: Shown['board']; readonly mesh: Mesh } | undefined;
  let chambers: Mesh[] = [];

  const draw = () => {
    light.position.copy(camera.position);
    renderer.render(scene, camera);
  };
  controls.addEventListener('change', draw);

  return {
    show(shown, chosen) {
      if (surface?.board !== shown.board) {
        surface?.mesh.geometry.dispose();
        surface?.mesh.removeFromParent();
        const first = surface === undefined;
        surface = { board: shown.board, mesh: boardMesh(shown) };
        scene.add(surface.mesh);
        if (first) lookAt(shown, camera, controls);
      }
      for (const mesh of chambers) {
        mesh.geometry.dispose();
        mesh.removeFromParent();
      }
      chambers = chamberMeshes(shown, chosen);
      scene.add(...chambers);
      draw();
    },
    turn(around, over) {
      const from = camera.position.clone().sub(controls.target);
      from.applyAxisAngle(new Vector3(0, 0, 1), around);
      const side = new Vector3().crossVectors(camera.up, from).normalize();
      const tilted = from.clone().applyAxisAngle(side, over);
      // Straight from above or below there is no telling which way is up.
      if (Math.abs(tilted.clone().normalize().z) < 0.98) from.copy(tilted);
      camera.position.copy(controls.target).add(from);
      controls.update();
      draw();
    },
    resize(width, height) {
      renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
      renderer.setSize(width, height, false);
      camera.aspect = width / height;
      camera.updateProjectionMatrix();
      draw();
    },
    close() {
      controls.dispose();
      renderer.dispose();
    },
  };
}

function boardMesh({ board }: Shown): Mesh {
  const { positions, triangles } = board.mesh;
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(positions), 3));
  geometry.setIndex(new BufferAttribute(triangles, 1));
  geometry.computeVertexNormals();
  const glassy = new MeshLambertMaterial({
    color: COLOURS.board,
    transparent: true,
    opacity: 0.3,
    depthWrite: false,
    side: DoubleSide,
  });
  const mesh = new Mesh(geometry, glassy);
  mesh.renderOrder = 1;
  return mesh;
}

/** Each chamber as the prism it is: its profile in the face's `s` and `z`, drawn out along `t`. */
function chamberMeshes({ result }: Shown, chosen: string | undefined): Mesh[] {
  const rows = new Map(result.rows.map((row) => [row.id, row.face]));
  const materials = {
    plain: new MeshLambertMaterial({ color: COLOURS.chamber, side: DoubleSide }),
    chosen: new MeshLambertMaterial({ color: COLOURS.chosen, side: DoubleSide }),
  };
  return result.chambers.map(({ id, row, profile, depth }) => {
    const { origin, along, inward } = rows.get(row)!;
    const shape = new Shape();
    profile.forEach(([s, z], i) => (i === 0 ? shape.moveTo(s, z) : shape.lineTo(s, z)));
    const geometry = new ExtrudeGeometry(shape, { depth: depth[1] - depth[0], bevelEnabled: false });
    geometry.translate(0, 0, depth[0]);
    const toBoard = new Matrix4().makeBasis(
      new Vector3(along[0], along[1], 0),
      new Vector3(0, 0, 1),
      new Vector3(inward[0], inward[1], 0),
    );
    toBoard.setPosition(origin[0], origin[1], 0);
    geometry.applyMatrix4(toBoard);
    return new Mesh(geometry, id === chosen ? materials.chosen : materials.plain);
  });
}

function lookAt({ result }: Shown, camera: PerspectiveCamera, controls: OrbitControls): void {
  const { length, thickness } = result.board;
  // As far off as the whole length takes at this shape of the picture, from before the left rail and above.
  const far = (0.6 * length) / (Math.tan((camera.fov * Math.PI) / 360) * Math.min(camera.aspect, 3));
  controls.target.set(length / 2, 0, thickness / 2);
  camera.position.copy(controls.target).add(new Vector3(-0.15, -0.8, 0.55).normalize().multiplyScalar(far));
  controls.update();
}
