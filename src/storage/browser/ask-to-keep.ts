/** Asks the browser not to clear this page's projects when the device runs short of room; false when it will not promise. */
export async function askToKeep(): Promise<boolean> {
  try {
    return (await navigator.storage.persist()) === true;
  } catch {
    // Browsers without the promise, and pages that may not ask: nothing is lost but the promise.
    return false;
  }
}
