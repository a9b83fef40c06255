export { citeInWords } from '@/lib/rules/law/in-words';
