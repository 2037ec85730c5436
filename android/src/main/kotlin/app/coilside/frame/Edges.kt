package app.coilside.frame

import android.app.Activity
import android.os.Build
import android.view.View
import android.view.WindowInsets
import android.view.WindowInsetsController
import app.coilside.view.Palette

/** How far the system's bars, the display's cut-outs and the keyboard reach into the window, pixels. */
class Edges(val left: Int, val top: Int, val right: Int, val bottom: Int, val keyboard: Boolean) {
    companion object {
        /** Draws from edge to edge, and tells how far the system reaches in whenever that changes. */
        fun draw(activity: Activity, root: View, palette: Palette, told: (Edges) -> Unit) {
            val light = android.graphics.Color.luminance(palette.paper) > LIGHT
            if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) {
                activity.window.setDecorFitsSystemWindows(false)
                val dark = WindowInsetsController.APPEARANCE_LIGHT_NAVIGATION_BARS
                activity.window.insetsController?.setSystemBarsAppearance(if (light) dark else 0, dark)
            } else {
                @Suppress("DEPRECATION")
                activity.window.decorView.systemUiVisibility = View.SYSTEM_UI_FLAG_LAYOUT_STABLE or
                    View.SYSTEM_UI_FLAG_LAYOUT_FULLSCREEN or View.SYSTEM_UI_FLAG_LAYOUT_HIDE_NAVIGATION or
                    if (light) View.SYSTEM_UI_FLAG_LIGHT_NAVIGATION_BAR else 0
            }
            root.setOnApplyWindowInsetsListener { _, insets ->
                told(of(insets))
                insets
            }
        }

        private fun of(insets: WindowInsets): Edges {
            if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) {
                val bars = insets.getInsets(WindowInsets.Type.systemBars() or WindowInsets.Type.displayCutout())
                val keys = insets.getInsets(WindowInsets.Type.ime())
                return Edges(bars.left, bars.top, bars.right, maxOf(bars.bottom, keys.bottom), keys.bottom > bars.bottom)
            }
            @Suppress("DEPRECATION")
            return with(insets) {
                val keyboard = systemWindowInsetBottom > stableInsetBottom
                Edges(systemWindowInsetLeft, systemWindowInsetTop, systemWindowInsetRight, systemWindowInsetBottom, keyboard)
            }
        }

        private const val LIGHT = 0.5f
    }
}
