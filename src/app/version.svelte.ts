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
  watch.isWaiting = registration.waiting !== null;
  registration.addEventListener('updatefound', () => {
    const coming = registration.installing;
    coming?.addEventListener('statechange', () => {
      watch.isWaiting = registration.waiting !== null;
    });
  });
}
