/** Whether a newer build has been kept by the service worker and waits for the old pages to close. */
class VersionWatch {
  isWaiting = $state(false);
  registration: ServiceWorkerRegistration | null = null;
}

const watch = new VersionWatch();

/** The watch; it begins with the first call in a browser. */
export function watchVersion(): { readonly isWaiting: boolean } {
  if (typeof navigator !== 'undefined' && 'serviceWorker' in navigator && !watch.registration) void look();
  return watch;
}

/** Lets the newer build take over, and opens the page again with it. */
export function useNewVersion(): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  watch.registration?.waiting?.postMessage('take over');
}

async function look(): Promise<void> {
  const registration = await navigator.serviceWorker.ready;
  watch.registration = registration;
  note(registration);
  registration.addEventListener('updatefound', () => {
    const coming = registration.installing;
    coming?.addEventListener('statechange', () => note(registration));
  });
}

/** On the first visit nothing older is at work, so nothing waits. */
function note(registration: ServiceWorkerRegistration): void {
  watch.isWaiting = registration.waiting !== null && navigator.serviceWorker.controller !== null;
}
