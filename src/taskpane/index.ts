import { catalogue } from "../functions/catalogue"; console.log(catalogue.length);
