import type { BuiltPiece, Piece } from '#core/joinery';
import {
  comparePieces,
  sizeDeviations,
  understandProject,
  type Carrying,
  type PartChange,
  type Understanding,
  type Understood,
  sayFindings,
} from '#core/pipeline';
import { sortBySeverity, type Problem } from '#core/problems';
import {
  putInPlace,
  redo,
  runCommand,
  runCommands,
  startHistory,
  undo,
  newProject,
  type Command,
  type History,
  type Project,
} from '#core/project';
import type { Head } from '#storage/browser';
import { CarryRoom } from './bench/carry-room.svelte.ts';
import { PaperRoom } from './paper/paper-room.svelte.ts';
import { CuttingRoom } from './saw/cutting-room.svelte.ts';
import { RoutingRoom } from './saw/routing-room.svelte.ts';
import { fetchDemo } from './demo.ts';
import { Keeper } from './keeper.svelte.ts';
import { openProjectFile } from './project-file.ts';

/** A version of a piece put aside. */
export interface KeptVersion {
  readonly piece: Piece;
  readonly built: BuiltPiece;
  readonly materials: Project['materials'];
}

/** The project under work with its past, what it comes to, and what was found wrong. The only holder of state that lasts. */
export class Workspace {
  #history = $state.raw<History>(startHistory(newProject('New project')));
  #refusals = $state.raw<readonly Problem[]>([]);
  #isOpen = $state(false);

  readonly project: Project = $derived(this.#history.present);
  /** Not reactive: the deviations asked for last. */
  #known: { readonly built: BuiltPiece; readonly deviations: ReadonlyMap<string, number> } | undefined;
  /** Not reactive: what was understood last, to work on from there. */
  #last: Understood | undefined;
  readonly understanding: Understanding = $derived.by(() => {
    const { project } = this;
    if (this.#last?.project === project) return this.#last.understanding;
    const understanding = understandProject(project, this.#last);
    this.#last = { project, understanding };
    return understanding;
  });
  /** The pieces before the last act, and whether the last act was one that can be compared. */
  #before = $state.raw<readonly BuiltPiece[] | null>(null);
  /** The parts that the last act made different. */
  readonly changes: readonly PartChange[] = $derived(
    this.#before ? changesOf(this.#before, this.understanding.pieces) : [],
  );
  /** Versions of pieces put aside to be compared, by the id of the piece. */
  #keptVersions = $state.raw<readonly KeptVersion[]>([]);
  readonly saw = new CuttingRoom(() => this.understanding.groups);
  readonly routing = new RoutingRoom(
    () => this.understanding.routing,
    () => this.saw.planned,
  );
  readonly paper = new PaperRoom();
  readonly #carry = new CarryRoom();
  readonly keeper = new Keeper();
  readonly #carryFindings: readonly Problem[] = $derived(
    this.understanding.pieces.flatMap((built) => this.carryingOf(built)?.findings ?? []),
  );
  readonly findings: readonly Problem[] = $derived(
    sortBySeverity([
      ...this.keeper.findings,
      ...this.understanding.findings,
      ...sayFindings(this.project, [...this.saw.findings, ...this.routing.findings, ...this.#carryFindings]),
    ]),
  );

  /** Whether a project has been brought from the device or begun. */
  get isOpen(): boolean {
    return this.#isOpen;
  }

  get canUndo(): boolean {
    return this.#history.past.length > 0;
  }

  get canRedo(): boolean {
    return this.#history.future.length > 0;
  }

  /** What the last act was refused for; empty when it was done. */
  get refusals(): readonly Problem[] {
    return this.#refusals;
  }

  /** Brings what was under work on this device, or the demo on the first start. */
  async start(): Promise<void> {
    const kept = await this.keeper.open();
    if (kept) await this.#receive(kept);
    else await this.begin(await fetchDemo());
  }

  /** Does one act; false when it is refused, with the reasons in `refusals`. */
  run(command: Command): boolean {
    const next = runCommand(this.#history, command);
    if (next.ok) this.#before = this.understanding.pieces;
    this.#refusals = next.ok ? [] : next.problems;
    if (next.ok) this.#set(next.value);
    return next.ok;
  }

  /** Does several acts as one step; how many were done. What was refused is in `refusals`. */
  runAll(commands: readonly Command[]): number {
    const { history, done, problems } = runCommands(this.#history, commands);
    if (done > 0) this.#before = this.understanding.pieces;
    this.#refusals = problems;
    this.#set(history);
    return done;
  }

  undo(): void {
    this.#before = this.understanding.pieces;
    this.#refusals = [];
    this.#set(undo(this.#history));
  }

  redo(): void {
    this.#before = this.understanding.pieces;
    this.#refusals = [];
    this.#set(redo(this.#history));
  }

  /** Begins with a project as a new one; the one before stays on this device. */
  async begin(project: Project): Promise<void> {
    await this.keeper.begin(project);
    await this.#receive(project);
  }

  /** Goes over to another project of this device. */
  async openStored(id: string): Promise<void> {
    const project = await this.keeper.openStored(id);
    if (project) await this.#receive(project);
    else this.refuse(this.keeper.findings);
  }

  /** Puts an earlier state of this project in the place of the present one, as a step that can be undone. */
  async takeEarlier(head: Pick<Head, 'id' | 'revision'>): Promise<void> {
    const read = await this.keeper.readEarlier(head);
    if (!read.ok) return this.refuse(read.problems);
    this.#before = this.understanding.pieces;
    this.#refusals = [];
    this.#set(putInPlace(this.#history, read.value));
  }

  /** Opens a file from the picker or dropped on the page as a project of its own; what lies open stays on this device. */
  async openFile(file: File): Promise<boolean> {
    const read = await openProjectFile(file);
    if (read.ok) await this.begin(read.value);
    else this.refuse(read.problems);
    return read.ok;
  }

  /** The version of a piece put aside, if there is one. */
  keptVersion(id: string): KeptVersion | null {
    return this.#keptVersions.find(({ piece }) => piece.id === id) ?? null;
  }

  /** Puts a version of a piece aside, to compare with what it becomes. */
  keepVersion(built: BuiltPiece): void {
    const piece = this.project.pieces.find(({ id }) => id === built.piece);
    if (!piece) return;
    this.forgetVersion(piece.id);
    this.#keptVersions = [...this.#keptVersions, { piece, built, materials: this.project.materials }];
  }

  /** Makes the version put aside the piece again. */
  bringBack(id: string): void {
    const kept = this.keptVersion(id);
    if (kept && this.run({ kind: 'change-piece', id, piece: kept.piece })) this.forgetVersion(id);
  }

  forgetVersion(id: string): void {
    this.#keptVersions = this.#keptVersions.filter(({ piece }) => piece.id !== id);
  }

  /** What was found about a piece: while it was built, about its parts as cut, about putting it together. */
  findingsOf(built: BuiltPiece): readonly Problem[] {
    const addresses = [built.letter, ...built.parts.map(({ id }) => id)];
    return this.findings.filter(
      (finding) => built.findings.includes(finding) || addresses.includes(finding.about ?? ''),
    );
  }

  /** How a piece goes together, once that has been looked into. */
  carryingOf(built: BuiltPiece): Carrying | null {
    return this.#carry.carryingOf(built);
  }

  /** Looks into how the pieces go together and through the route, as far as that is not known yet. */
  lookIntoCarrying(): void {
    this.#carry.look(this.understanding.pieces, this.project.route);
  }

  /** How well each length of a piece is known from the survey, one standard deviation in mm by its name in the working. */
  deviationsOf(built: BuiltPiece): ReadonlyMap<string, number> {
    if (this.#known?.built !== built)
      this.#known = { built, deviations: sizeDeviations(this.project, this.understanding, built.piece) };
    return this.#known.deviations;
  }

  /** Shows why something could not be done. */
  refuse(problems: readonly Problem[]): void {
    this.#refusals = problems;
  }

  /** Works out another project before it is shown, so that neither holds up the page for long. */
  async #receive(project: Project): Promise<void> {
    try {
      this.#last = { project, understanding: understandProject(project) };
      await afterOthers();
    } catch {
      // it throws again where it is shown, and there the page tells of it
      this.#last = undefined;
    }
    this.#take(project);
  }

  #take(project: Project): void {
    this.#before = null;
    this.#keptVersions = [];
    this.#history = startHistory(project);
    this.#refusals = [];
    this.#isOpen = true;
  }

  #set(history: History): void {
    if (history === this.#history) return;
    this.#history = history;
    this.keeper.keep(history.present);
  }
}

function changesOf(before: readonly BuiltPiece[], after: readonly BuiltPiece[]): readonly PartChange[] {
  const ids = [...new Set([...after, ...before].map(({ piece }) => piece))];
  const find = (pieces: readonly BuiltPiece[], id: string) => pieces.find(({ piece }) => piece === id);
  return ids.flatMap((id) => comparePieces(find(before, id), find(after, id)));
}

/** Lets the browser do what waits: taps, drawing. */
function afterOthers(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
