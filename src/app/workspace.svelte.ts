import type { Understanding } from '#core/pipeline';
import { understandProject } from '#core/pipeline';
import { sortBySeverity, type Problem } from '#core/problems';
import {
  redo,
  runCommand,
  startHistory,
  undo,
  newProject,
  type Command,
  type History,
  type Project,
} from '#core/project';
import { PaperRoom } from './paper/paper-room.svelte.ts';
import { CuttingRoom } from './saw/cutting-room.svelte.ts';
import { fetchDemo } from './demo.ts';
import { Keeper } from './keeper.svelte.ts';

/** The project under work with its past, what it comes to, and what was found wrong. The only holder of state that lasts. */
export class Workspace {
  #history = $state.raw<History>(startHistory(newProject('New project')));
  #refusals = $state.raw<readonly Problem[]>([]);
  #isOpen = $state(false);

  readonly project: Project = $derived(this.#history.present);
  readonly understanding: Understanding = $derived(understandProject(this.project));
  readonly saw = new CuttingRoom(() => this.understanding.groups);
  readonly paper = new PaperRoom();
  readonly keeper = new Keeper();
  readonly findings: readonly Problem[] = $derived(
    sortBySeverity([...this.keeper.findings, ...this.understanding.findings, ...this.saw.findings]),
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
    if (kept) this.#take(kept);
    else await this.begin(await fetchDemo());
  }

  /** Does one act; false when it is refused, with the reasons in `refusals`. */
  run(command: Command): boolean {
    const next = runCommand(this.#history, command);
    this.#refusals = next.ok ? [] : next.problems;
    if (next.ok) this.#set(next.value);
    return next.ok;
  }

  undo(): void {
    this.#refusals = [];
    this.#set(undo(this.#history));
  }

  redo(): void {
    this.#refusals = [];
    this.#set(redo(this.#history));
  }

  /** Begins with a project as a new one; the one before stays on this device. */
  async begin(project: Project): Promise<void> {
    await this.keeper.begin(project);
    this.#take(project);
  }

  /** Goes over to another project of this device. */
  async openStored(id: string): Promise<void> {
    const project = await this.keeper.openStored(id);
    if (project) this.#take(project);
    else this.refuse(this.keeper.findings);
  }

  /** Shows why something could not be done. */
  refuse(problems: readonly Problem[]): void {
    this.#refusals = problems;
  }

  #take(project: Project): void {
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
