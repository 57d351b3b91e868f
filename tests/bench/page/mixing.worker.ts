import type { MixtureAnswer } from '../../../src/mixture/mixture-types.ts';
import type { Result } from '../../../src/result.ts';
import { executeMixtureJob } from '../../../workers/mixture.ts';
import { benchMixture, type Mix, type Row } from '../mixture.ts';

const scope = self as unknown as {
  onmessage: (() => void) | null;
  postMessage(message: Row[]): void;
};

/** The mixture worker's own entry. */
const mix: Mix = (targets, shelf, options) => {
  const { value } = executeMixtureJob({ kind: 'mix', targets, shelf, options }, () => {});
  const found = value as Result<MixtureAnswer[], { readonly code: string }>;
  if (!found.ok) throw new Error(found.fault.code);
  return found.value;
};

scope.onmessage = () => scope.postMessage(benchMixture(mix));
