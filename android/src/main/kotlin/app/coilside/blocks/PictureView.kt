package app.coilside.blocks

import android.annotation.SuppressLint
import android.widget.FrameLayout
import android.widget.ImageView
import android.widget.LinearLayout
import app.coilside.R
import app.coilside.view.MATCH
import app.coilside.view.ROUND_SMALL_DP
import app.coilside.view.Type
import app.coilside.view.WRAP
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.dp
import app.coilside.view.glyphDrawable
import app.coilside.view.pad
import app.coilside.view.surface
import app.coilside.view.words
import coilside.PhotoView

/** A photograph with its words. [badge] says that it is of another time. */
@SuppressLint("ViewConstructor")
class PictureView(private val ui: Ui, photo: PhotoView, badge: String?) : LinearLayout(ui.context) {
    private val picture = Framed(ui)

    init {
        orientation = VERTICAL
        val palette = ui.palette
        val holder = FrameLayout(context)
        holder.addView(picture, FrameLayout.LayoutParams(MATCH, WRAP))
        if (badge != null) {
            val sign = context.words(badge, palette.paper, Type.SMALL, Weight.BOLD)
            sign.background = context.surface(palette.ink, roundDp = BADGE_ROUND_DP)
            sign.pad(10, 3)
            holder.addView(sign, FrameLayout.LayoutParams(WRAP, WRAP).apply { setMargins(dp(8), dp(8), dp(8), 0) })
        }
        addView(holder, context.below())
        picture.contentDescription = listOfNotNull(badge, photo.caption).joinToString(": ")
        picture.setImageDrawable(context.glyphDrawable(R.drawable.glyph_picture, palette.soft))
        addView(context.words(photo.caption, palette.ink, Type.SMALL), context.below(6))
        for (line in photo.read) addView(context.words(line, palette.ink, Type.SMALL), context.below(4))
        for (flag in photo.flags) addView(ui.marked(flag, palette.attention, R.drawable.glyph_attention, Type.SMALL), context.below(4))
        ui.preview(photo.digest) { bitmap -> if (bitmap != null) picture.show(bitmap) }
    }

    /** Four by three, as most pictures are. */
    private class Framed(ui: Ui) : ImageView(ui.context) {
        init {
            scaleType = ScaleType.CENTER
            background = context.surface(ui.palette.sunk, ui.palette.line, 1, ROUND_SMALL_DP)
            clipToOutline = true
        }

        fun show(bitmap: android.graphics.Bitmap) {
            scaleType = ScaleType.CENTER_CROP
            setImageBitmap(bitmap)
        }

        override fun onMeasure(widthSpec: Int, heightSpec: Int) {
            val wide = MeasureSpec.getSize(widthSpec)
            val asked = if (MeasureSpec.getMode(widthSpec) == MeasureSpec.AT_MOST) minOf(wide, dp(LEAST_DP)) else wide
            setMeasuredDimension(asked, asked * 3 / 4)
        }
    }

    private companion object {
        const val BADGE_ROUND_DP = 14f
        const val LEAST_DP = 136
    }
}
