package app.coilside.checks

import android.graphics.Bitmap
import android.graphics.Canvas
import android.graphics.Color
import android.graphics.drawable.ColorDrawable
import android.graphics.drawable.GradientDrawable
import android.view.View
import android.view.ViewGroup
import android.widget.ScrollView

/** A view as it is drawn, in its own pixels. */
fun picture(view: View): Bitmap = Bitmap.createBitmap(view.width, view.height, Bitmap.Config.ARGB_8888).also { view.draw(Canvas(it)) }

/** All that is wrong with what a window shows: what scrolls is looked at whole. */
fun faults(window: View, contrast: Double = CONTRAST_LEAST): List<Fault> =
    (clipped(window) + faintWithin(window, picture(window), contrast) + unnamed(window) + small(window) + disordered(window) + readThrough(window)).distinct()

/** What is faint in [root], which [shown] shows; and in what scrolls in it, each by a picture of all of its own. */
private fun faintWithin(root: View, shown: Bitmap, contrast: Double): List<Fault> {
    val scrolling = root.open().filterIsInstance<ScrollView>().filter { it.childCount > 0 }.toList()
    val inner = scrolling.flatMap { it.getChildAt(0).open() }.toSet()
    val outermost = scrolling.filter { it !in inner }
    return faint(root.open().filter { it !in inner }, root, shown, contrast) +
        outermost.filter { it.getChildAt(0).run { width > 0 && height > 0 } }.flatMap { faintWithin(it.getChildAt(0), whole(it), contrast) }
}

/** What scrolls, drawn above the ground on which it lies. */
private fun whole(scrolling: ViewGroup): Bitmap {
    val content = scrolling.getChildAt(0)
    val whole = Bitmap.createBitmap(content.width, content.height, Bitmap.Config.ARGB_8888)
    whole.eraseColor(ground(scrolling))
    content.draw(Canvas(whole))
    return whole
}

/** The colour of the nearest thing behind a view that has one. */
private fun ground(view: View): Int =
    generateSequence(view) { it.parent as? View }.mapNotNull { (it.background as? ColorDrawable)?.color ?: (it.background as? GradientDrawable)?.color?.defaultColor }
        .firstOrNull { Color.alpha(it) == 0xFF } ?: error("nothing lies behind ${view.named()}")
