package app.coilside.frame

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.Canvas
import android.graphics.Paint
import android.view.View
import app.coilside.view.Palette
import app.coilside.view.dp

/** One tooth a step: those that are done stand out. The words below it say the same. */
@SuppressLint("ViewConstructor")
class Comb(context: Context, private val palette: Palette, private val done: Int, total: Int) : View(context) {
    private val total = total.coerceAtLeast(1)
    private val paint = Paint()

    init {
        importantForAccessibility = IMPORTANT_FOR_ACCESSIBILITY_NO
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) =
        setMeasuredDimension(MeasureSpec.getSize(widthSpec), dp(HIGH_DP))

    override fun onDraw(canvas: Canvas) {
        val step = width.toFloat() / total
        val tooth = (step * TOOTH_SHARE).coerceIn(dp(1).toFloat(), dp(7).toFloat())
        for (at in 0 until total) {
            paint.color = if (at < done) palette.tooth else palette.toothRest
            val from = if (layoutDirection == LAYOUT_DIRECTION_RTL) width - at * step - tooth else at * step
            canvas.drawRect(from, 0f, from + tooth, height.toFloat(), paint)
        }
    }

    private companion object {
        const val HIGH_DP = 16
        const val TOOTH_SHARE = 0.55f
    }
}
