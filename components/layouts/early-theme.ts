/**
 * Applies the kept theme before anything is painted. One constant string, because the content policy lets an inline script
 * run only by its hash, and `astro.config.mjs` takes the hash of exactly this text.
 */
export const earlyTheme =
  "try{var t=localStorage.getItem('theme');if(t==='paper'||t==='night')document.documentElement.dataset.theme=t}catch(e){}";
