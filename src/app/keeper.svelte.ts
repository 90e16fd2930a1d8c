import { fail, succeed, type Problem, type Result } from '#core/problems';
import type { Project } from '#core/project';
import { readProject, writeJson } from '#formats/json';
import { openStore, type Head, type ProjectStore } from '#storage/browser';
import { leaveLastAct, takeLastAct } from './last-act.ts';
import { lastOpened, rememberOpened } from './last-opened.ts';

/** Changes that follow each other within this time are kept together, ms. */
const settle = 300;

type Mark = Pick<Head, 'id' | 'revision'>;

/**
 * Keeps the project in this browser a moment after each change, and says how that went. A change that could not be kept
 * stays here and is tried again with the next one; another tab's newer state is noticed and never overwritten.
 */
export class Keeper {
  #state = $state<'opening' | 'kept' | 'keeping' | 'unkept'>('opening');
  /** What was found on opening stays until the page is closed; what was found on keeping, until it succeeds. */
  #onOpening = $state.raw<readonly Problem[]>([]);
  #findings = $state.raw<readonly Problem[]>([]);
  #hasNewer = $state(false);
  #mark = $state.raw<Mark>({ id: newId(), revision: 0 });
  #store: ProjectStore | null = null;
  #pending: Project | null = null;
  /** What is not in the store yet, waiting or on its way. */
  #unstored: Project | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #writing: Promise<void> = Promise.resolve();
  #channel: BroadcastChannel | null = null;

  readonly status: string = $derived(
    { opening: '', kept: 'Kept on this device', keeping: 'Keeping…', unkept: 'Not kept' }[this.#state],
  );

  get hasFailed(): boolean {
    return this.#state === 'unkept';
  }

  get findings(): readonly Problem[] {
    return [...this.#onOpening, ...this.#findings];
  }

  /** Another tab has kept a later state of this project. */
  get hasNewer(): boolean {
    return this.#hasNewer;
  }

  /** Under which id the project is kept. */
  get id(): string {
    return this.#mark.id;
  }

  /** What was opened last on this device; null when nothing is there yet, or nothing that can be read. */
  async open(): Promise<Project | null> {
    const project = await this.#openLast();
    this.#onOpening = this.#findings;
    this.#findings = [];
    return project;
  }

  async #openLast(): Promise<Project | null> {
    const opened = await openStore(readProject);
    if (!opened.ok) return this.#fail(opened.problems);
    this.#store = opened.value;
    this.#listen();
    void navigator.storage?.persist?.().catch(() => false); // or the browser may clear it when short of room
    const listed = await opened.value.list();
    if (!listed.ok) return this.#fail(listed.problems);
    const head = listed.value.find((each) => each.id === lastOpened()) ?? listed.value[0];
    const kept = head ? await this.openStored(head.id) : null;
    return kept && (this.#takeLastAct() ?? kept);
  }

  /** Another project of this browser; null with findings when it cannot be read. */
  async openStored(id: string): Promise<Project | null> {
    await this.flush();
    const loaded = await this.#store?.load(id);
    if (!loaded?.ok) return this.#fail(loaded?.problems ?? []);
    this.#settleOn(loaded.value, loaded.problems);
    return loaded.value.project;
  }

  /** All projects of this browser, the last kept first. */
  async list(): Promise<readonly Head[]> {
    const listed = await (this.#store?.list() ?? Promise.resolve(succeed<readonly Head[]>([])));
    return listed.ok ? listed.value : [];
  }

  /** Removes another project with all its states from this browser; fails with a finding when the browser refuses. */
  remove(id: string): Promise<Result<void>> {
    return this.#store?.remove(id) ?? Promise.resolve(succeed(undefined));
  }

  /** The states of this project that are kept, the latest first, the one under work left out. */
  async listEarlier(): Promise<readonly Head[]> {
    await this.flush();
    const { id, revision } = this.#mark;
    const listed = await (this.#store?.listVersions(id) ?? Promise.resolve(succeed<readonly Head[]>([])));
    return listed.ok ? listed.value.filter((head) => head.revision !== revision) : [];
  }

  /** One of those states; fails when it is no longer kept or cannot be read. */
  async readEarlier({ id, revision }: Mark): Promise<Result<Project>> {
    const found = await this.#store?.readVersion(id, revision);
    if (!found?.ok) return found ?? fail(gone);
    return found.value === null ? fail(gone) : readProject(found.value);
  }

  /** Takes a project as a new one and keeps it under an id of its own. */
  async begin(project: Project): Promise<void> {
    await this.flush();
    this.#settleOn({ id: newId(), revision: 0 }, []);
    this.keep(project);
  }

  /** Keeps a state a moment from now. */
  keep(project: Project): void {
    this.#pending = project;
    this.#unstored = project;
    this.#state = 'keeping';
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), settle);
  }

  /** Keeps at once what is not kept yet. */
  flush(): Promise<void> {
    clearTimeout(this.#timer);
    this.#writing = this.#writing.then(() => this.#write());
    return this.#writing;
  }

  /** Keeps what is not kept yet, at the close of the page; what the store does not get in time is found on the next start. */
  leave(): void {
    if (this.#unstored && this.#store) leaveLastAct({ ...this.#mark, text: writeJson(this.#unstored) });
    void this.flush();
  }

  #takeLastAct(): Project | null {
    const text = takeLastAct(this.#mark.id, this.#mark.revision);
    const read = text === null ? null : readProject(text);
    if (!read?.ok) return null;
    this.keep(read.value);
    return read.value;
  }

  close(): void {
    void this.flush().then(() => this.#store?.close());
    this.#channel?.close();
  }

  async #write(): Promise<void> {
    const project = this.#pending;
    if (!project) return;
    if (!this.#store) {
      this.#state = 'unkept';
      return;
    }
    this.#pending = null;
    const { id, revision } = this.#mark;
    const saved = await this.#store.save({
      id,
      name: project.name,
      text: writeJson(project),
      basedOn: revision,
    });
    if (this.#unstored === project) this.#unstored = null;
    if (saved.ok) this.#announce(saved.value);
    else this.#keepForLater(project, saved);
  }

  #announce(head: Head): void {
    this.#settleOn(head, []);
    this.#channel?.postMessage({ id: head.id, revision: head.revision } satisfies Mark);
  }

  #keepForLater(project: Project, refused: Extract<Result<Head>, { ok: false }>): void {
    const isElsewhere = refused.problems.some((problem) => problem.code === 'changed-elsewhere');
    if (isElsewhere) this.#hasNewer = true;
    else this.#pending = this.#unstored = this.#pending ?? project;
    this.#state = isElsewhere ? 'kept' : 'unkept';
    this.#findings = refused.problems;
  }

  #settleOn(mark: Mark, findings: readonly Problem[]): void {
    this.#mark = { id: mark.id, revision: mark.revision };
    this.#findings = findings;
    this.#hasNewer = false;
    if (!this.#pending) this.#state = 'kept';
    rememberOpened(mark.id);
  }

  #fail(problems: readonly Problem[]): null {
    this.#findings = problems;
    this.#state = 'unkept';
    return null;
  }

  #listen(): void {
    if (typeof BroadcastChannel === 'undefined') return;
    this.#channel = new BroadcastChannel('joggle');
    this.#channel.addEventListener('message', (event: MessageEvent<Mark>) => {
      const { id, revision } = event.data;
      if (id === this.#mark.id && revision > this.#mark.revision) this.#hasNewer = true;
    });
  }
}

const gone: Problem = {
  severity: 'warn',
  code: 'state-gone',
  message: 'That state of the project is no longer kept on this device.',
  remedy: 'Choose a later one, or open a file you saved.',
};

function newId(): string {
  return `project-${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`;
}
