import type { Attachment } from 'svelte/attachments';

/** Keeps what is chosen in a strip before the eye, along the strip only. `chosen` names it, so that a change is seen. */
export function keepInView(chosen: string): Attachment<HTMLElement> {
  return (strip) => {
    const link = chosen === '' ? null : strip.querySelector<HTMLElement>('[aria-current]');
    if (link) strip.scrollTo({ left: link.offsetLeft - (strip.clientWidth - link.offsetWidth) / 2 });
  };
}
