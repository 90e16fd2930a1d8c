import { usualAim, type PlanAim } from '#core/cutting';

/** What a plan may be weighed by besides its cost, as it is asked for. */
export const weightNames: Readonly<Record<keyof PlanAim, string>> = {
  leftovers: 'Large leftovers',
  settings: 'Few settings of the fence',
  cuts: 'Few cuts',
  turns: 'Few turns of heavy sheets',
};

/** How much something counts: times its usual weight. */
export const weightLevels = [
  { value: '0', label: 'does not count' },
  { value: '0.1', label: 'little' },
  { value: '1', label: 'as usual' },
  { value: '30', label: 'much' },
] as const;

/** How often its usual weight each counts, as chosen; what is left out counts as usual. */
export type WeightChoice = Readonly<Partial<Record<keyof PlanAim, number>>>;

/** The weights chosen, for the search. */
export function weightsOf(choice: WeightChoice): Required<PlanAim> {
  const weigh = (key: keyof PlanAim): number => usualAim[key] * (choice[key] ?? 1);
  return {
    leftovers: weigh('leftovers'),
    settings: weigh('settings'),
    cuts: weigh('cuts'),
    turns: weigh('turns'),
  };
}
