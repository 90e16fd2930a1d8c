import { drawPages, makeBundle, type Bundle, type BundleSource, type PageSets } from '#formats/bundle';

/** What the worker is asked for, and what it answers, by number. */
export interface BundleRequest {
  readonly number: number;
  readonly source: BundleSource;
}

export type BundleAnswer =
  | { readonly number: number; readonly bundle: Bundle; readonly pages: PageSets }
  | { readonly number: number; readonly failure: string };

self.addEventListener('message', (event: MessageEvent<BundleRequest>) => {
  void answer(event.data).then((reply) => self.postMessage(reply));
});

async function answer({ number, source }: BundleRequest): Promise<BundleAnswer> {
  try {
    return { number, bundle: await makeBundle(source), pages: drawPages(source) };
  } catch (error) {
    return { number, failure: error instanceof Error ? error.message : String(error) };
  }
}
