/**
 * Lets property tests that name no seed of their own try the same values on every run, so that a failure is about the change at hand. With
 * FC_SEED=random they look for new ones.
 */

import fc from 'fast-check';

if (process.env.FC_SEED !== 'random') fc.configureGlobal({ seed: 20_261_125 });
