import bench from './bench.json';
import desk from './desk.json';
import { PHONE, spanish } from './make';
import office from './office.json';

/** All of Spanish: for the server, and for pages of bench, desk and office. */
export default spanish({ ...PHONE, ...bench, ...desk, ...office });
