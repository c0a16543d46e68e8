import { lookAtStates } from './look-at-states.ts';

lookAtStates('paper');
