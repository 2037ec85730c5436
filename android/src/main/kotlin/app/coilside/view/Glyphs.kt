package app.coilside.view

import android.content.Context
import android.graphics.drawable.Drawable
import android.view.View
import android.widget.ImageView
import app.coilside.R
import coilside.Tone

/** A small drawing of our own in one colour, [sizeDp] wide and high. It is never the only sign: words stand beside it. */
fun Context.glyph(id: Int, color: Int, sizeDp: Number = 26): ImageView = ImageView(this).apply {
    setImageDrawable(glyphDrawable(id, color))
    layoutParams = android.widget.LinearLayout.LayoutParams(dp(sizeDp), dp(sizeDp))
    importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO
}

/** The drawing itself. */
fun Context.glyphDrawable(id: Int, color: Int): Drawable = checkNotNull(getDrawable(id)).mutate().apply { setTint(color) }

/** The drawing that goes with a tone. */
fun glyphOf(tone: Tone): Int = when (tone) {
    Tone.PLAIN -> R.drawable.glyph_plain
    Tone.QUIET -> R.drawable.glyph_quiet
    Tone.GOOD -> R.drawable.glyph_done
    Tone.ATTENTION -> R.drawable.glyph_attention
    Tone.DANGER -> R.drawable.glyph_danger
    Tone.PRIMARY -> R.drawable.glyph_primary
}

/** The pictogram of that name, `drawable/sign_<name>`; the general sign where there is none. */
fun Context.signOf(name: String): Int {
    val plain = name.removePrefix("emergency-").replace('-', '_')
    val id = resources.getIdentifier("sign_$plain", "drawable", resources.getResourcePackageName(R.string.app_name))
    return if (id != 0) id else R.drawable.glyph_danger
}
