import { createContext } from 'svelte';
import type { Workspace } from './workspace.svelte.ts';

/** The workspace that the layout opened, for every component below it. */
export const [getWorkspace, setWorkspace] = createContext<Workspace>();
