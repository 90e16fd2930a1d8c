/** The type with every part readonly and every intersection written out, so that two ways of saying it compare equal. */
type Plain<T> = T extends string | number | boolean | null | undefined
  ? T
  : { readonly [Key in keyof T]: Plain<T[Key]> };

type Identical<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;

/** `true` when both types are the same but for `readonly`; `false` otherwise, an absent optional key included. */
export type Same<A, B> = Identical<Plain<A>, Plain<B>>;
