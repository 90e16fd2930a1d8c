import { fail, succeed, type Problem, type Result } from '#core/problems';

/** Does what the browser may refuse; its refusal comes back as a finding. */
export async function attempt<T>(act: () => Promise<T>, isOpening = false): Promise<Result<T>> {
  try {
    return succeed(await act());
  } catch (reason) {
    return fail(wordRefusal(reason, isOpening));
  }
}

function wordRefusal(reason: unknown, isOpening: boolean): Problem {
  const name = reason instanceof Error || reason instanceof DOMException ? reason.name : 'unknown';
  switch (name) {
    case 'QuotaExceededError':
      return stop(
        'storage-full',
        'The browser has no room left, so the last change was not stored.',
        'Save the project as a file now; then remove projects you no longer need, or free space on the device.',
      );
    case 'VersionError':
      return stop(
        'storage-newer',
        'The projects in this browser were stored by a newer Joggle.',
        'Reload the page to get the newer one. Nothing stored has been touched.',
      );
    case 'SecurityError':
    case 'NotSupportedError':
      return refused(name);
    case 'InvalidStateError':
      // Some browsers answer so in a private window; later it means that the connection was given up for a newer page.
      return isOpening ? refused(name) : closed;
    default:
      return stop(
        'storage-failed',
        `The browser could not store or read the project (${name}).`,
        'Save the project as a file now, then reload the page.',
      );
  }
}

/** The browser keeps nothing: in a private window, or by its settings. */
export function refused(detail: string): Problem {
  return {
    severity: 'warn',
    code: 'storage-refused',
    message: `This browser does not keep anything for this page (${detail}): a private window or its settings forbid it.`,
    remedy: 'Work goes on, but save the project as a file before you close the page.',
  };
}

const closed = stop(
  'storage-closed',
  'This tab has given up its hold on the stored projects, most likely for a newer Joggle in another tab.',
  'Save the project as a file if it has changes that are not kept, then reload the page.',
);

function stop(code: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code, message, remedy };
}
