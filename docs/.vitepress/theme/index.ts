import type { Theme } from 'vitepress';
import Figure from './parts/Figure.vue';
import Layout from './Layout.vue';
import NotFound from './parts/NotFound.vue';
import Side from './parts/Side.vue';
import './style/index.css';

export default {
  Layout,
  NotFound,
  enhanceApp({ app }) {
    app.component('Side', Side);
    app.component('Figure', Figure);
  },
} satisfies Theme;
