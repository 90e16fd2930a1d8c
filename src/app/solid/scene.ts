import type { ModelBody } from '#core/drawing';
import {
  AmbientLight,
  Box3,
  BufferGeometry,
  Color,
  DirectionalLight,
  DoubleSide,
  Float32BufferAttribute,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
  OrthographicCamera,
  Raycaster,
  Scene,
  Spherical,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';

/** Where an address is written over the picture, CSS pixels. */
export interface SceneLabel {
  readonly part: string;
  readonly x: number;
  readonly y: number;
}

/** The inks of the page, as CSS colours. */
export interface SceneInks {
  readonly wood: string;
  readonly ink: string;
  readonly hand: string;
  readonly handGround: string;
}

/** A picture of solids that can be turned. It draws only when something changes. */
export interface SolidScene {
  /** 0 together, 1 fully pulled apart. */
  setApart(share: number): void;
  setSelected(part: string | null): void;
  setInks(inks: SceneInks): void;
  /** Looks from a side: along these turns about the upright and down from the zenith, radians. */
  lookFrom(round: number, down: number): void;
  /** Turns the view a little. */
  turn(round: number, down: number): void;
  /** The part under a point of the canvas in CSS pixels; null for none. */
  pick(x: number, y: number): string | null;
  resize(): void;
  close(): void;
}

interface Shown {
  readonly body: ModelBody;
  readonly group: Group;
  readonly mesh: Mesh<BufferGeometry, MeshLambertMaterial>;
  readonly lines: LineSegments<BufferGeometry, LineBasicMaterial>;
}

/** Where one first stands: to the right, in front and above. */
export const firstLook = { round: Math.PI / 5, down: 1.1 };

/** Opens a scene on a canvas; `onlabels` is told after each picture where the addresses belong. A piece drawn from above is laid down. Throws where there is no WebGL. */
export function openScene(
  canvas: HTMLCanvasElement,
  bodies: readonly ModelBody[],
  onlabels: (labels: readonly SceneLabel[]) => void,
  isLying = false,
): SolidScene {
  const stage = setStage(canvas, bodies, isLying);
  const { camera, controls, shown } = stage;
  let isAsked = false;
  let isClosed = false;
  /** One picture in the next frame, however much has changed until then. */
  function ask(): void {
    if (isAsked || isClosed) return;
    isAsked = true;
    requestAnimationFrame(() => {
      isAsked = false;
      if (isClosed) return;
      drawStage(stage);
      onlabels(spreadLabels(shown.map((each) => placeLabel(each, stage))));
    });
  }
  const after =
    <Given extends readonly unknown[]>(act: (...given: Given) => void) =>
    (...given: Given): void => {
      act(...given);
      ask();
    };
  controls.addEventListener('change', ask);
  const lookFrom = after((round: number, down: number) => standAt(stage, round, down));
  const resize = after(() => fitCanvas(stage));
  lookFrom(firstLook.round, firstLook.down);
  resize();
  return {
    lookFrom,
    resize,
    setApart: after((share) => pull(stage, share)),
    setSelected: after((part) => choose(shown, part)),
    setInks: after((inks) => dye(shown, inks)),
    turn: (round, down) => {
      const at = new Spherical().setFromVector3(camera.position.clone().sub(controls.target));
      lookFrom(at.theta + round, Math.min(Math.max(at.phi + down, 0.02), Math.PI - 0.02));
    },
    pick: (x, y) => pickPart(shown, camera, toView(canvas, x, y)),
    close: () => {
      isClosed = true;
      strike(stage);
    },
  };
}

interface Stage {
  readonly canvas: HTMLCanvasElement;
  readonly renderer: WebGLRenderer;
  readonly scene: Scene;
  readonly camera: OrthographicCamera;
  readonly controls: OrbitControls;
  readonly light: DirectionalLight;
  readonly shown: readonly Shown[];
  /** Half the longest diagonal of the piece, mm. */
  readonly reach: number;
}

function setStage(canvas: HTMLCanvasElement, bodies: readonly ModelBody[], isLying: boolean): Stage {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
  const scene = new Scene();
  const shown = bodies.map(showBody);
  if (isLying) scene.rotation.x = -Math.PI / 2;
  shown.forEach(({ group }) => scene.add(group));
  scene.updateMatrixWorld();
  const whole = new Box3().setFromObject(scene);
  const reach = Math.max(whole.getSize(new Vector3()).length() / 2, 1);
  const camera = new OrthographicCamera();
  const controls = new OrbitControls(camera, canvas);
  controls.target.copy(whole.getCenter(new Vector3()));
  const light = new DirectionalLight('white', 2.2);
  const lamps = new Group().add(new AmbientLight('white', 1.6), light, light.target);
  if (isLying) lamps.rotation.x = Math.PI / 2; // the lamps stay as they hang
  scene.add(lamps);
  return { canvas, renderer, scene, camera, controls, light, shown, reach };
}

function drawStage({ renderer, scene, camera, controls, light, reach }: Stage): void {
  light.position.copy(camera.position).add(new Vector3(-reach, 2 * reach, reach));
  light.target.position.copy(controls.target);
  renderer.render(scene, camera);
}

function fitCanvas({ canvas, renderer, camera, reach }: Stage): void {
  const { clientWidth: width, clientHeight: height } = canvas;
  if (width === 0 || height === 0) return;
  renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
  renderer.setSize(width, height, false);
  const half = reach * 0.92 * Math.max(1, height / width);
  Object.assign(camera, { left: (-half * width) / height, right: (half * width) / height });
  Object.assign(camera, { top: half, bottom: -half, near: -20 * reach, far: 20 * reach });
  camera.updateProjectionMatrix();
}

function standAt({ camera, controls, reach }: Stage, round: number, down: number): void {
  const from = new Vector3().setFromSpherical(new Spherical(4 * reach, down, round));
  camera.position.copy(controls.target).add(from);
  controls.update();
}

/** Pulls the parts away from each other and steps back so that all are seen. */
function pull({ scene, shown, camera, controls, reach }: Stage, share: number): void {
  for (const { body, group } of shown)
    group.position.set(body.shift.x * share, body.shift.y * share, body.shift.z * share);
  scene.updateMatrixWorld();
  const whole = new Box3();
  for (const { group } of shown) whole.expandByObject(group);
  const middle = whole.getCenter(new Vector3());
  camera.position.add(middle.clone().sub(controls.target));
  controls.target.copy(middle);
  camera.zoom = reach / Math.max(whole.getSize(new Vector3()).length() / 2, 1);
  camera.updateProjectionMatrix();
  controls.update();
}

function choose(shown: readonly Shown[], part: string | null): void {
  for (const { body, mesh } of shown) mesh.userData.isChosen = body.part === part;
  shown.forEach(ink);
}

function dye(shown: readonly Shown[], inks: SceneInks): void {
  for (const { mesh } of shown) mesh.userData.inks = inks;
  shown.forEach(ink);
}

function strike({ controls, shown, renderer }: Stage): void {
  controls.dispose();
  for (const { mesh, lines } of shown) {
    mesh.geometry.dispose();
    mesh.material.dispose();
    lines.geometry.dispose();
    lines.material.dispose();
  }
  renderer.dispose();
}

function showBody(body: ModelBody): Shown {
  const faces = new BufferGeometry();
  faces.setAttribute('position', new Float32BufferAttribute([...body.faces], 3));
  faces.computeVertexNormals();
  const edges = new BufferGeometry();
  edges.setAttribute('position', new Float32BufferAttribute([...body.edges], 3));
  const wood = new MeshLambertMaterial({ side: DoubleSide, polygonOffset: true });
  wood.polygonOffsetFactor = 1;
  wood.polygonOffsetUnits = 1;
  const mesh = new Mesh(faces, wood);
  mesh.userData.part = body.part;
  const lines = new LineSegments(edges, new LineBasicMaterial());
  const group = new Group().add(mesh, lines);
  return { body, group, mesh, lines };
}

function ink({ mesh, lines }: Shown): void {
  const inks = mesh.userData.inks as SceneInks | undefined;
  if (!inks) return;
  const isChosen = mesh.userData.isChosen === true;
  mesh.material.color = new Color(isChosen ? inks.handGround : inks.wood);
  lines.material.color = new Color(isChosen ? inks.hand : inks.ink);
}

function placeLabel({ body, group }: Shown, { canvas, camera }: Stage): SceneLabel {
  const { x, y, z } = body.centre;
  const at = group.localToWorld(new Vector3(x, y, z)).project(camera);
  return {
    part: body.part,
    x: ((at.x + 1) / 2) * canvas.clientWidth,
    y: ((1 - at.y) / 2) * canvas.clientHeight,
  };
}

const labelRoom = { x: 44, y: 25 }; // CSS pixels that an address takes

/** Labels that would cover one another, moved below each other. */
function spreadLabels(labels: readonly SceneLabel[]): readonly SceneLabel[] {
  const placed: SceneLabel[] = [];
  for (const label of [...labels].sort((one, other) => one.y - other.y)) {
    let { y } = label;
    for (const other of placed)
      if (Math.abs(other.x - label.x) < labelRoom.x && Math.abs(other.y - y) < labelRoom.y)
        y = other.y + labelRoom.y;
    placed.push({ ...label, y });
  }
  return placed;
}

function toView(canvas: HTMLCanvasElement, x: number, y: number): Vector2 {
  return new Vector2((2 * x) / canvas.clientWidth - 1, 1 - (2 * y) / canvas.clientHeight);
}

function pickPart(shown: readonly Shown[], camera: OrthographicCamera, at: Vector2): string | null {
  const ray = new Raycaster();
  ray.setFromCamera(at, camera);
  const [hit] = ray.intersectObjects(
    shown.map(({ mesh }) => mesh),
    false,
  );
  return (hit?.object.userData.part as string | undefined) ?? null;
}
