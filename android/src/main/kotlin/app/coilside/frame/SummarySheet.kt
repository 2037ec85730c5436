package app.coilside.frame

import android.annotation.SuppressLint
import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.ClipData
import android.content.Intent
import android.net.Uri
import android.os.Build
import android.print.PrintAttributes
import android.print.PrintManager
import android.view.View
import android.webkit.WebResourceRequest
import android.webkit.WebView
import android.webkit.WebViewClient
import android.widget.LinearLayout
import app.coilside.Folders
import app.coilside.R
import app.coilside.blocks.Ui
import app.coilside.view.Flow
import app.coilside.view.MATCH
import app.coilside.view.PressButton
import app.coilside.view.WRAP
import app.coilside.view.pad
import coilside.Tone
import java.io.File

/** The owner's summary: to read together, to share and to print. The page runs nothing and loads nothing from elsewhere. */
@SuppressLint("ViewConstructor")
class SummarySheet(private val ui: Ui, private val activity: Activity, val page: String, private val title: String, private val close: () -> Unit) :
    LinearLayout(activity) {
    private val web = WebView(activity)
    private var mayPrint = false
    private var wantsPrint = false

    init {
        orientation = VERTICAL
        setBackgroundColor(ui.palette.paper)
        isClickable = true
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) accessibilityPaneTitle = title
        with(web.settings) {
            javaScriptEnabled = false
            allowFileAccess = false
            allowContentAccess = false
            blockNetworkLoads = true
            textZoom = (resources.configuration.fontScale * PER_CENT).toInt()
        }
        web.webViewClient = Pages()
        web.loadDataWithBaseURL(null, page, "text/html", "utf-8", null)
        addView(web, LayoutParams(MATCH, 0, 1f))
        val ways = Flow(context, GAP_DP, fills = true)
        ways.pad(16, 12)
        ways.addView(way("share", "share", Tone.PRIMARY) { share() })
        ways.addView(way("print", "print") { print() })
        ways.addView(way("close", "summary-close", icon = R.drawable.glyph_close, press = close))
        addView(ways, LayoutParams(MATCH, WRAP))
    }

    private fun way(key: String, role: String, tone: Tone = Tone.PLAIN, icon: Int? = null, press: () -> Unit): View =
        PressButton(context, ui.palette, ui.words.say(key), tone, icon = icon, fire = press).apply { setTag(R.id.role, role) }

    private fun share() {
        val file = File(Folders.shared(activity), FILE).apply { writeText(page) }
        val address = Folders.address(file)
        val send = Intent(Intent.ACTION_SEND)
            .setType("text/html")
            .putExtra(Intent.EXTRA_STREAM, address)
            .putExtra(Intent.EXTRA_SUBJECT, title)
            .addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
        send.clipData = ClipData.newRawUri("", address)
        activity.startActivity(Intent.createChooser(send, title))
    }

    /** Prints as soon as the page is laid out. */
    fun print() {
        wantsPrint = true
        if (!mayPrint) return
        wantsPrint = false
        val printer = activity.getSystemService(PrintManager::class.java) ?: return
        printer.print(title, web.createPrintDocumentAdapter(title), PrintAttributes.Builder().build())
    }

    /** Keeps clear of the system's bars, pixels. */
    fun inset(top: Int, bottom: Int) = setPadding(0, top, 0, bottom)

    fun end() = web.destroy()

    private inner class Pages : WebViewClient() {
        override fun onPageFinished(view: WebView?, url: String?) {
            mayPrint = true
            if (wantsPrint) print()
        }

        /** Whoever is to be called or written to is called and written to by other apps. */
        override fun shouldOverrideUrlLoading(view: WebView?, request: WebResourceRequest?): Boolean {
            request?.url?.let(::outside)
            return true
        }

        private fun outside(address: Uri) {
            try {
                activity.startActivity(Intent(Intent.ACTION_VIEW, address))
            } catch (none: ActivityNotFoundException) {
                announceForAccessibility(ui.words.say("open-none"))
            }
        }
    }

    private companion object {
        const val FILE = "summary.html"
        const val PER_CENT = 100
        const val GAP_DP = 10
    }
}
