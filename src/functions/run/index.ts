export { STARTS } from "./starts";
