import regularUrl from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import boldUrl from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url';
import type { BundleSource, PageSets } from '#formats/bundle';
import type { OutputFile } from '#core/pipeline';
import { startBundleWorker } from './start-worker.ts';
import type { BundleAnswer, BundleRequest } from './bundle-worker.ts';

type Work = Omit<BundleSource, 'fonts'>;

/** All that comes out on paper and in files, drawn and written in a worker; an answer to older work is dropped. */
export class PaperRoom {
  #state = $state<'idle' | 'preparing' | 'ready' | 'failed'>('idle');
  #files = $state.raw<readonly OutputFile[]>([]);
  #pages = $state.raw<PageSets | null>(null);
  #failure = $state('');
  #number = 0;
  #done: Work | null = null;
  #worker: Worker | null = null;

  get state(): 'idle' | 'preparing' | 'ready' | 'failed' {
    return this.#state;
  }

  get files(): readonly OutputFile[] {
    return this.#files;
  }

  get pages(): PageSets | null {
    return this.#pages;
  }

  /** Why it failed, for whoever mends it. */
  get failure(): string {
    return this.#failure;
  }

  /** Draws and writes everything anew, unless nothing has changed since. */
  async prepare(work: Work): Promise<void> {
    if (this.#done && isSameWork(this.#done, work)) return;
    this.#done = work;
    this.#state = 'preparing';
    this.#number += 1;
    const number = this.#number;
    const [regular, bold] = await Promise.all([fetchFont(regularUrl), fetchFont(boldUrl)]);
    if (number !== this.#number) return;
    const request: BundleRequest = { number, source: { ...work, fonts: { regular, bold } } };
    this.#bench().postMessage(request);
  }

  #bench(): Worker {
    if (this.#worker) return this.#worker;
    const worker = startBundleWorker();
    worker.addEventListener('message', (event: MessageEvent<BundleAnswer>) => this.#take(event.data));
    worker.addEventListener('error', (event) => this.#take({ number: this.#number, failure: event.message }));
    this.#worker = worker;
    return worker;
  }

  #take(answer: BundleAnswer): void {
    if (answer.number !== this.#number) return;
    if ('failure' in answer) {
      this.#failure = answer.failure;
      this.#state = 'failed';
      this.#done = null;
      return;
    }
    this.#files = answer.bundle.files;
    this.#pages = answer.pages;
    this.#state = 'ready';
  }
}

function isSameWork(a: Work, b: Work): boolean {
  return (
    a.project === b.project &&
    a.planned.length === b.planned.length &&
    a.planned.every((each, index) => each.plan === b.planned[index]?.plan) &&
    a.routed.length === b.routed.length &&
    a.routed.every((each, index) => each.plan === b.routed[index]?.plan)
  );
}

async function fetchFont(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`a font is missing: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}
