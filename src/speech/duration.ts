export { roundedDurationS, spokenDuration } from './numbers.ts';
