import type { Hand, Mate, News } from './types.ts';

/** Milliseconds of one turn; and how long one who sees no way to more waits before he listens again. */
const turn = 100;
const rest = 15;

/** Milliseconds that the end may wait for what the mate is about to tell. */
const grace = 30;

/** What has been told and not been heard yet. */
interface Letters<N> {
  toLead: N | null;
  toMate: N | null;
  mateState: News['state'];
  isOver: boolean;
}

/** Both work at their own pace; each hears at the start of a turn what the other has told. Ends with the lead, who has heard all. */
export async function workByClock<N extends News, Plan>(
  lead: Hand<N, Plan>,
  mate: Mate<N>,
  first: N,
): Promise<void> {
  const letters: Letters<N> = { toLead: null, toMate: first, mateState: 'working', isOver: false };
  // a mate that fails is missed, no more: the lead has all it told
  const mateWork = goOnAsMate(mate, letters).catch(() => void (letters.mateState = 'out'));
  await goOnAsLead(lead, letters);
  letters.isOver = true;
  await Promise.race([mateWork, wait(grace)]);
  await lead.work({ heard: letters.toLead, steps: 0 });
}

async function goOnAsLead<N extends News, Plan>(lead: Hand<N, Plan>, letters: Letters<N>): Promise<void> {
  for (;;) {
    const heard = letters.toLead;
    letters.toLead = null;
    const news = await lead.work({ heard, milliseconds: turn });
    if (news.state === 'settled' || news.state === 'out') return;
    letters.toMate = laterOf(letters.toMate, news);
    if (news.state === 'working' || letters.toLead !== null) continue;
    if (isStill(letters)) return;
    await wait(rest);
  }
}

/** Whether nothing more will come from the mate. */
function isStill<N extends News>({ mateState, toMate }: Letters<N>): boolean {
  return mateState === 'idle' ? !hasFound(toMate) : mateState !== 'working';
}

function hasFound(news: News | null): boolean {
  return news !== null && news.found !== null;
}

async function goOnAsMate<N extends News>(mate: Mate<N>, letters: Letters<N>): Promise<void> {
  while (!letters.isOver) {
    const heard = letters.toMate;
    letters.toMate = null;
    letters.mateState = 'working';
    const news = await mate.work({ heard, milliseconds: turn });
    letters.toLead = laterOf(letters.toLead, news);
    letters.mateState = news.state;
    if (news.state === 'settled' || news.state === 'out') return;
    while (news.state === 'idle' && !letters.isOver && !hasFound(letters.toMate)) await wait(rest);
  }
}

/** The later of two letters, with what only the earlier enclosed. */
function laterOf<N extends News>(earlier: N | null, later: N): N {
  return earlier !== null && later.found === null ? { ...later, found: earlier.found } : later;
}

function wait(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
