package app.coilside.checks

import android.graphics.Bitmap
import android.graphics.Canvas
import android.view.View
import android.widget.ScrollView
import app.coilside.support.all

/** A view as it is drawn, in its own pixels. */
fun picture(view: View): Bitmap = Bitmap.createBitmap(view.width, view.height, Bitmap.Config.ARGB_8888).also { view.draw(Canvas(it)) }

/** All that is wrong with what a window shows: what scrolls is drawn whole. */
fun faults(window: View): List<Fault> {
    val inside = window.all().filterIsInstance<ScrollView>().mapNotNull { it.getChildAt(0) }.filter { it.height > 0 }.toList()
    val faint = inside.flatMap { faint(it, over(it, window)) } + faint(window, picture(window))
    return (clipped(window) + faint + unnamed(window) + small(window) + disordered(window)).distinct()
}

/** What scrolls, drawn above the ground that lies below it. */
private fun over(content: View, window: View): Bitmap {
    val ground = picture(window).getPixel(window.width / 2, window.height / 2)
    val whole = Bitmap.createBitmap(content.width, content.height, Bitmap.Config.ARGB_8888)
    whole.eraseColor(ground)
    content.draw(Canvas(whole))
    return whole
}
