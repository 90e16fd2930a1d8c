/** What a linear system of readings, each divided by its sigma, can and cannot tell about its unknowns. */
export interface DesignAnalysis {
  readonly rank: number;
  /** Covariance of the unknowns, as far as they are determined (pseudo-inverse of AᵀA). */
  readonly covariance: readonly (readonly number[])[];
  /** I - A (AᵀA)⁺ Aᵀ: covariance of the residuals; its diagonal holds the redundancy of each reading. */
  readonly residualCovariance: readonly (readonly number[])[];
  /** Directions in which the unknowns can move unnoticed, each of unit length in scaled unknowns. */
  readonly nullSpace: readonly (readonly number[])[];
}
