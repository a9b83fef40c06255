export { LAW, type CiteId, type LawEntry } from './registry';
