import { defineConfig } from 'vite';

export default defineConfig({
  build: { outDir: '../build/page', emptyOutDir: true, target: 'es2022' },
});
