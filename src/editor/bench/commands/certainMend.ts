export { certainMend, mayBeMended as hasTrueNumber } from '../../../engine/readings/checks/certainMend.ts';
