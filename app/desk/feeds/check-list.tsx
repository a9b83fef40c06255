export { CheckList } from '@/app/_ui/check-list';
