import type { Attachment } from 'svelte/attachments';

/** Brings what is chosen before the eye, as little as it takes. */
export function shownWhen(isChosen: boolean): Attachment<HTMLElement> {
  return (element) => {
    if (isChosen) element.scrollIntoView({ block: 'nearest' });
  };
}
